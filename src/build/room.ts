import { distance, length, scale, subtract, type Vec } from '../geometry/point.ts';
import { outermost, type Standing } from './section-reach.ts';

/** What is left between a round hole and what stands in it. */
export interface Room {
  /** At the tightest, metres; negative where it does not go in. */
  readonly cover: number;
  /** The same, were it in the middle. */
  readonly atBest: number;
  /** Unit vector from the hole's middle to where it is tightest. */
  readonly tightest: Vec;
}

/**
 * The room round a post, pier or tube in a round hole: half the hole's width less the distance from its middle to the
 * furthest corner, or to the far side of a round.
 *
 * @param place of the middle of what stands in it; `middle` of the hole; `width` of the hole; metres
 */
export function roomRound(standing: Standing, place: Vec, middle: Vec, width: number): Room {
  const furthest = (at: Vec) =>
    outermost(standing, at, middle).reduce((far, corner) =>
      distance(corner, middle) > distance(far, middle) ? corner : far,
    );
  const corner = furthest(place);
  const reach = distance(corner, middle);
  return {
    cover: width / 2 - reach,
    atBest: width / 2 - distance(furthest(middle), middle),
    tightest:
      reach > 0 ? scale(subtract(corner, middle), 1 / length(subtract(corner, middle))) : { x: 1, y: 0 },
  };
}

/**
 * How far a load may stand off the middle of a round footing before part of its base stops bearing: an eighth of its
 * width, the core of a circular section (Timoshenko, "Strength of Materials", part I; from memory).
 */
export const coreOf = (width: number): number => width / 8;
