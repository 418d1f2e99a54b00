export * from './format.ts';
export * from './parse.ts';
export * from './problem.ts';
export * from './pulling-units.ts';
export * from './units.ts';
