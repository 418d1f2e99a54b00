export * from './format.ts';
export * from './parse.ts';
export * from './problem.ts';
export * from './units.ts';
