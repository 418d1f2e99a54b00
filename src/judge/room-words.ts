import type { Room } from '../build/room.ts';
import { length, scale, type Vec } from '../geometry/point.ts';
import { thingName } from '../job/words.ts';
import type { SitedHole } from '../plan/hole.ts';
import { type JobView, postOf } from './view.ts';
import { capital, moveWords, small, wayWords } from './words.ts';

/** What the sentences on a hole's room are made of; metres. */
export interface RoomFound {
  readonly view: JobView;
  readonly sited: SitedHole;
  readonly room: Room;
  /** From where the post stands, or is to stand, to the hole's own middle. */
  readonly drift: Vec;
  readonly least: number;
  /** To take off one side, or all round where it is too narrow in the very middle, so that the next reading is in. */
  readonly by: number;
  /** The post stands, and is measured. */
  readonly stands: boolean;
}

export interface RoomWords {
  readonly drift: string;
  readonly fits: string;
  readonly tight: string;
  readonly shave: string;
  readonly cell: string;
}

/** A drift under this has no way worth naming: a hundredth of a millimetre. */
const NO_DRIFT = 1e-5;

export function roomWords(found: RoomFound): RoomWords {
  const { view, room, least } = found;
  const { units } = view.plan;
  const name = nameOf(found);
  const shave = shaveWords(found);
  const asked = least > 0 ? `, and ${small(least, units)} is asked` : '';
  const left =
    room.cover >= 0
      ? `That leaves ${small(room.cover, units)} beside ${name} where it is tightest${asked}`
      : `${capital(name)} does not go in on its mark: ${small(room.cover, units)} is missing`;
  return {
    drift: driftWords(found),
    fits: `${capital(name)} fits, with ${small(room.cover, units)} beside it where it is tightest.`,
    tight: `${left}. ${shave}`,
    shave,
    cell:
      room.cover >= 0 ? `${small(room.cover, units)} at the tightest` : `${small(room.cover, units)} missing`,
  };
}

function driftWords({ view, sited, drift, stands }: RoomFound): string {
  const from = stands ? `${thingName(postOf(sited.label), view.plan)} as it stands` : 'the planned centre';
  if (length(drift) < NO_DRIFT) return `The middle of hole ${sited.label} lies on ${from}.`;
  return `The middle of hole ${sited.label} lies ${moveWords(sited.site, drift, view.ground)} from ${from}.`;
}

/** On one side, unless the hole would be too narrow for it in the very middle. */
function shaveWords({ view, sited, room, drift, least, by }: RoomFound): string {
  const { units } = view.plan;
  if (room.atBest < least) return `Widen the foot by ${small(by, units)} all round.`;
  const side = length(drift) < NO_DRIFT ? room.tightest : scale(drift, -1);
  return `Shave ${small(by, units)} off the side that lies ${wayWords(sited.site, side, view.ground)}.`;
}

/** What has to find room: a tube round the post where there is one. */
function nameOf({ view, sited }: RoomFound): string {
  const { section, label } = sited;
  const tube = section.kind === 'post' && (view.plan.supplies?.tube?.m ?? 0) > 0;
  const name = thingName(postOf(label), view.plan);
  return tube ? `the tube of ${name}` : name;
}

export const decisionText = (view: JobView, hole: string): string =>
  `${capital(thingName(postOf(hole), view.plan))} would stand, or may stand, more than an eighth of the hole’s width off the middle of its footing, which then does not bear on all of its base: whether that will do is a decision by whoever is responsible for the structure. Log the decision on this hole, with who decided and what.`;
