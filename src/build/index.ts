export { BAG_SIZES, type BagSize, bagsFor, holeFill } from './concrete.ts';
export { type HoleDepth, requiredDepth, requiredDepthOf } from './depth.ts';
export { postLength } from './post-length.ts';
