export { BAG_SIZES, type BagSize, bagsFor, holeFill } from './concrete.ts';
export { type RequiredDepth, requiredDepth } from './depth.ts';
export { postLength } from './post-length.ts';
