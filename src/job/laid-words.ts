import type { LaidBy } from './entry-schema.ts';
import { lengthWords } from './length.ts';
import type { FromStakes } from './place-schema.ts';

type Front = Extract<LaidBy, { on: 'stakes' }>['front'];

/** How a plan was laid on what is there already, as one line of the field book, with lengths as they were typed. */
export function laidWords(laid: LaidBy): string {
  const line = `A to B ${lengthWords(laid.baseline)}`;
  if (laid.on === 'stakes')
    return `Laid on two points that are there, ${line}: centre ${fromStakesWords(laid.centre)}; front ${frontWords(laid.front)}`;
  const pegs = laid.pegs.map((peg) => `stake ${peg.hole} ${fromStakesWords(peg)}`).join('; ');
  return `Laid on two stakes of holes that are there, ${line}: ${pegs}`;
}

const frontWords = (front: Front): string => {
  if (front.by !== 'way') return `toward a place ${fromStakesWords(front)}`;
  const { way } = front;
  return way === 'left' || way === 'right' ? `looks ${way} of A–B` : `looks from ${way}`;
};

/** `18′ 6″ from A and 12′ 3″ from B, left of A–B`; `4.000 m along A–B and 2.500 m to the left`. */
function fromStakesWords(at: FromStakes): string {
  return at.by === 'pulls'
    ? `${lengthWords(at.fromA)} from A and ${lengthWords(at.fromB)} from B, ${at.side} of A–B`
    : `${lengthWords(at.station)} along A–B and ${lengthWords(at.offset)} to the ${at.side}`;
}
