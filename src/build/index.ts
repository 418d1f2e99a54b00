export { BAG_SIZES, type BagSize, bagsFor, type DugHole, type HoleFill, holeFill } from './concrete.ts';
export { type RequiredDepth, requiredDepth } from './depth.ts';
export { type PostEnds, postLength } from './post-length.ts';
