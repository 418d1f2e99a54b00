import { laidWords } from '../../../job/laid-words.ts';
import { thingName } from '../../../job/words.ts';
import type { Situation } from '../../../judge/situation.ts';
import type { JobView } from '../../../judge/view.ts';
import { capital, small } from '../../../judge/words.ts';
import { checkAllowance } from '../../../stakeout/check-allowance.ts';
import type { CheckSet, ListedHole, PlannedPull } from '../../../stakeout/index.ts';
import { nailPulls } from '../../../stakeout/string-nails.ts';
import { placeOfEnd, referencePlaces, stakePlaces } from '../../drawn-site.ts';
import { alongSlope, riseBetween } from '../../rise.ts';
import { guardWords } from '../check-words.ts';
import { lieWords, placeWords } from '../place-words.ts';
import { listIntro, riseWords } from './pull-list-words.ts';
import { NONE, reads, type SheetPart, type SheetTable, TO_WRITE } from './sheet-parts.ts';

const DEGREES = 180 / Math.PI;

const SIDES: Record<ListedHole['side'], string> = { left: 'left', right: 'right', 'on-line': 'on the line' };

/** Both reference stakes and the line between them, and every further stake or nail that was placed. */
export function referencePart(situation: Situation, view: JobView): SheetPart {
  const { laid, site } = situation;
  const { units } = view.plan;
  if (!laid || !site) return { heading: 'Reference stakes' };
  const measured = view.measured.baseline;
  const placed = [
    { name: 'A', at: site.a },
    { name: 'B', at: site.b },
  ].map(({ name, at }) => `${name} stands ${placeWords({ right: at.right.m, front: at.front.m }, units)}.`);
  const line = measured
    ? `A to B, nail to nail, was pulled: ${reads(view, measured.length)}. All that follows goes by that; pull it again each day before anything else.`
    : `A to B, nail to nail: ${reads(view, laid.baseline)}. Drive B so that the tape reads exactly this: every length from B hangs on it.`;
  return {
    heading: 'Reference stakes',
    sentences: [
      line,
      ...(site.laid ? [`${laidWords(site.laid)}.`] : []),
      lieWords(laid.motion, units),
      ...placed,
    ],
    tables: furtherTables(situation, view),
  };
}

/** Further stakes and nails, each by its tapes from A and from B. */
function furtherTables(situation: Situation, view: JobView): SheetTable[] {
  const stakes = stakePlaces(situation);
  const further = referencePlaces(situation);
  if (!stakes || further.length === 0) return [];
  const { instruments } = view.plan;
  const rows = further.map(({ thing, label, place }) => {
    const pulls = nailPulls(label, place, { ...stakes, instruments });
    return [
      capital(thingName(thing)),
      reads(view, pulls.fromA),
      reads(view, pulls.fromB),
      SIDES[pulls.side],
      TO_WRITE,
      TO_WRITE,
    ];
  });
  return [
    {
      caption: 'Further stakes and nails',
      readings: 2,
      nameHead: 'Stake',
      heads: ['From A', 'From B', 'Side', 'Read, A', 'Read, B'],
      rows,
    },
  ];
}

/** Every hole's two tapes in the order of the work. */
export function pullListPart(view: JobView, rows: readonly ListedHole[], alone: boolean): SheetPart {
  const rise = riseWords(rows, alone);
  const beyond = rows.filter(({ withinTape }) => !withinTape);
  return {
    heading: 'Pull list',
    sentences: [
      ...listIntro(alone),
      ...(rise === null ? [] : [rise]),
      ...beyond.map(({ hole }) => `Hole ${hole} is beyond the tape from one of the stakes.`),
    ],
    tables: [pullListTable(view, rows)],
  };
}

/** Readings of the tape in hand, level; along the slope too where any rise is known. */
function pullListTable(view: Pick<JobView, 'plan' | 'inHand'>, rows: readonly ListedHole[]): SheetTable {
  const sloping = rows.some(({ tapes }) => tapes.some(({ slope }) => slope !== null));
  return {
    caption: 'Tapes to every hole, in the order of the work',
    readings: sloping ? 4 : 2,
    nameHead: 'Hole',
    heads: [
      'From A, level',
      'From B, level',
      ...(sloping ? ['From A, along the slope', 'From B, along the slope'] : []),
      'Side',
      'Tapes cross',
      'Good to',
      'Read, A',
      'Read, B',
    ],
    rows: rows.map(({ hole, tapes, side, crossing }) => [
      hole,
      ...tapes.map(({ level }) => reads(view, level)),
      ...(sloping ? tapes.map(({ slope }) => slopeCell(view, slope)) : []),
      SIDES[side],
      `${Math.round(crossing.angle * DEGREES)}°`,
      Number.isFinite(crossing.drms) ? small(crossing.drms, view.plan.units) : 'nothing sideways',
      TO_WRITE,
      TO_WRITE,
    ]),
  };
}

/** From stake to stake: what proves the staking before anybody digs. */
export function checksPart(
  situation: Situation,
  view: JobView,
  checks: CheckSet,
  fromFurther: readonly PlannedPull[],
): SheetPart | null {
  const { guarding, further } = checks;
  const lists = [
    { caption: guarding.length > 0 ? 'These first, nail to nail' : NAIL_TO_NAIL, pulls: guarding },
    { caption: guarding.length > 0 ? 'For whoever wants more of them' : NAIL_TO_NAIL, pulls: further },
    { caption: 'From further stakes', pulls: fromFurther },
  ].filter(({ pulls }) => pulls.length > 0);
  if (lists.length === 0) return null;
  return {
    heading: 'Check pulls before digging',
    sentences: [
      'A misread tape moves a stake unseen. Each of these must read what is printed; where one does not, pull both its stakes again from A and B before a stake is moved.',
      ...(guarding.length > 0 ? [guardWords(checks, view.plan.units)] : []),
      'May be off: what good tapes alone explain. More than that is a misreading, or a stake beside its place.',
    ],
    tables: lists.map(({ caption, pulls }) => checkTable(situation, view, caption, pulls)),
  };
}

const NAIL_TO_NAIL = 'From stake to stake, nail to nail';

function checkTable(
  situation: Situation,
  view: JobView,
  caption: string,
  pulls: readonly PlannedPull[],
): SheetTable {
  const slopes = pulls.map(({ from, to, expected }) => {
    const rise = riseBetween(situation, from, to);
    return rise === null ? null : alongSlope(expected, rise);
  });
  const sloping = slopes.some((slope) => slope !== null);
  return {
    caption,
    readings: sloping ? 2 : 1,
    ...(sloping ? {} : { narrow: true }),
    nameHead: 'Pull',
    heads: ['Level', ...(sloping ? ['Along the slope'] : []), 'May be off', 'Read'],
    rows: pulls.map(({ from, to, expected }, i) => [
      `${thingName(from.thing)} to ${thingName(to.thing)}`,
      reads(view, expected),
      ...(sloping ? [slopeCell(view, slopes[i] ?? null)] : []),
      allowanceCell(situation, view, { from, to }),
      TO_WRITE,
    ]),
  };
}

function allowanceCell(
  situation: Situation,
  { plan: { units, instruments } }: JobView,
  { from, to }: Pick<PlannedPull, 'from' | 'to'>,
): string {
  const stakes = stakePlaces(situation);
  const [p, q] = [placeOfEnd(situation, from), placeOfEnd(situation, to)];
  const most = stakes && p && q ? checkAllowance(p, q, { ...stakes, instruments }) : Number.NaN;
  return Number.isFinite(most) ? small(most, units) : NONE;
}

const slopeCell = (view: Pick<JobView, 'plan' | 'inHand'>, slope: number | null): string =>
  slope === null ? 'rise not known' : reads(view, slope);
