import { pullingWords } from '../../../job/pulling-words.ts';
import { shapeName } from '../../../job/words.ts';
import { groundLinesOf, type Situation } from '../../../judge/situation.ts';
import type { Assessment } from '../../../judge/types.ts';
import { type JobView, viewOf } from '../../../judge/view.ts';
import type { Drawn } from '../../../ui/index.ts';
import { formatSmall, type Units } from '../../../units/index.ts';
import { drawnSite } from '../../drawn-site.ts';
import { handDigWords } from '../../hand-dig.ts';
import { RELEASE } from '../../release.ts';
import { stringsOf } from '../strings/strings-of.ts';
import { stakeOf } from '../use-stake.ts';
import { pullRows } from './pull-rows.ts';
import type { SheetDrawing, SheetPart, StakingSheet } from './sheet-parts.ts';
import { checksPart, pullListPart, referencePart } from './sheet-pulls.ts';
import { stringsDrawn, stringsPart, tiesDrawn, tiesPart } from './sheet-ties.ts';

/** Of a drawing over the whole width of a page, pixels: 186 mm between margins of 12 mm on A4. */
const WHOLE = { width: 690, maxHeight: 520 };

export interface SheetAsked {
  readonly situation: Situation;
  readonly assessment: Assessment;
  readonly alone: boolean;
  /** When it is made, in words. */
  readonly at: string;
  /** Entries of the log that it is made from. */
  readonly entries: number;
}

/** All that is needed to stake a job without the phone; null until the plan lies on the site. */
export function stakingSheet(asked: SheetAsked): StakingSheet | null {
  const { situation, assessment, alone } = asked;
  const view = viewOf(situation);
  const strings = stringsOf(situation);
  if (!view || !strings || !situation.laid) return null;
  const { state } = stakeOf({ situation, assessment }, null, { alone });
  const drawn = drawnSite(situation, assessment.holes, { lookOf: () => ({ state: 'staked' }), front: true });
  const rows = pullRows(situation, alone);
  const parts: readonly (SheetPart | null)[] = [
    {
      heading: 'Where everything goes',
      drawing: siteDrawing(tiesDrawn(drawn, strings)),
      sentences: [LEGEND, ...(drawn.lines ? [LINES_LEGEND] : [])],
    },
    referencePart(situation, view),
    pullListPart(view, rows, alone),
    checksPart(situation, view, state.checks(), state.fromFurther),
    stringsPart(view, strings, stringsDrawing(stringsDrawn(drawn, strings))),
    tiesPart(view, strings, drawn),
    { heading: 'How it was computed', sentences: computedWords(asked, view) },
  ];
  return {
    job: view.plan.name,
    head: headWords(asked, view),
    cautions: [...lineCautions(asked), ...cautionsFor(view.plan.units)],
    parts: parts.filter((part) => part !== null),
  };
}

const LEGEND =
  'Rings: the centre of each hole. Squares: A, B and further stakes. Thin crosses: the lines of the offset stakes, told hole by hole under Ties. Do not measure off the drawing.';

const LINES_LEGEND =
  'Dashes that run on: lines on the ground. A heavy line: a wall of a house. Strokes lean to the side on which no stake can stand.';

const siteDrawing = (drawn: Drawn): SheetDrawing => ({ ...WHOLE, title: 'Holes, stakes and ties', drawn });
const stringsDrawing = (drawn: Drawn): SheetDrawing => ({
  ...WHOLE,
  title: 'Strings and their nails',
  drawn,
});

const UNIT_WORDS: Record<Units, string> = {
  'ft-in-16': 'feet, inches and sixteenths of an inch',
  'ft-in-32': 'feet, inches and thirty-seconds of an inch',
  ft: 'feet and hundredths of a foot, not inches',
  m: 'metres',
  mm: 'millimetres',
};

function headWords({ at }: SheetAsked, view: JobView): string[] {
  const { plan } = view;
  return [
    `Made ${at}. ${shapeName(plan.shape)}: ${view.holes.length} ${view.holes.length === 1 ? 'hole' : 'holes'}.`,
    `Lengths are in ${UNIT_WORDS[plan.units]}. ${tapeWords(view)}`,
  ];
}

function tapeWords({ inHand, plan }: Pick<JobView, 'inHand' | 'plan'>): string {
  if (!inHand) return 'They are for a tape that reads true.';
  const pulled = pullingWords(inHand.pulling, plan.units);
  const how = pulled.length === 0 ? '' : `, ${pulled.join(', ')}`;
  return `They are what tape ${inHand.tape.label}${how} must read: no other tape will do.`;
}

/** Of every line on the ground what is too near it, else what is kept from it; and the lines that are missing on the drawing. */
function lineCautions({ situation, assessment: { lines } }: SheetAsked): string[] {
  const missing = groundLinesOf(situation).problems.map(({ text }) => text);
  const told = lines.flatMap(({ text, short, asSetText, asSetShort }) => [
    short || text,
    asSetShort || asSetText,
  ]);
  return [...missing, ...told.filter((text) => text !== ''), ...(lines.length > 0 ? [NO_SURVEY] : [])];
}

const NO_SURVEY = 'Where a line on the ground runs is as it was said: this sheet is no survey of a boundary.';

/** What can hurt, or be lost, with nothing but paper in hand. */
const cautionsFor = (units: Units): string[] => [
  'Have every buried line marked before a stake is driven, private lines too.',
  handDigWords(units),
  'A tape that sags or runs along a slope reads too long. Hold it level and tight unless a length is told along the slope.',
  'Two tapes meet on both sides of A–B: mind the side.',
  'Make the check pulls before digging, and the ties of a hole before its stake is dug away.',
  'Cover open holes.',
  'Local code and those licensed to decide have the last word. This sheet says where posts go; it does not say that footings will carry.',
];

function computedWords({ assessment, entries }: SheetAsked, view: JobView): string[] {
  return [
    'The plan lies on A and on the direction from A to B as it was drawn, turned and shifted, never stretched. Level lengths are straight from nail to nail in plan; along the slope they are √(level² + rise²), with the rise from heights that were read.',
    'Good to: the error to be expected of a place where two tapes cross, √(a² + b²) ÷ sin of the angle, from the errors a and b of the two tapes; two places in three are better.',
    ...toleranceWords(assessment, view),
    `Made from ${entries} entries of the field book by Swingtape ${RELEASE}, rules version ${assessment.version}.`,
  ];
}

/** How far a stake may be from its place, for who checks with this sheet in hand. */
function toleranceWords({ holes: [first] }: Assessment, { plan }: JobView): string[] {
  if (!first) return [];
  return [
    `A stake is in when it stands within ${formatSmall(first.staked.position.tolerance, plan.units)} of its place: twice the post’s tolerance, for the hole has room.`,
  ];
}
