import { add, scale, subtract, type Vec } from '../../../geometry/point.ts';
import { type Ground, listWords, moveWords, small, wayWords } from '../../../judge/words.ts';
import { readingOn, type TapeInHand } from '../../../measure/index.ts';
import { barredBy, wallBetween } from '../../../stakeout/ground.ts';
import { NAIL_CLEARANCE } from '../../../stakeout/string-nails.ts';
import { LONG_STRING } from '../../../stakeout/string-sag.ts';
import type {
  LaidString,
  NailPlace,
  StringCrossing,
  StringPlan,
  StringsAsked,
} from '../../../stakeout/string-types.ts';
import type { OffsetPair } from '../../../stakeout/tie-offsets.ts';
import { formatLength, type Units } from '../../../units/index.ts';

const DEGREES = 180 / Math.PI;
/** Down, for 29.7° is not the 30° that would do. A millionth keeps whole degrees what they are. */
const degreesOf = (angle: number): string => `${Math.floor(angle * DEGREES + 1e-6)}°`;

/** `S1, over holes 1, P and 5`. */
export const stringName = ({ label, marks }: Pick<LaidString, 'label' | 'marks'>): string =>
  `${label}, over ${marks.length === 1 ? 'hole' : 'holes'} ${listWords(marks.map(({ hole }) => hole))}`;

/** What the strings come to: how many, how sharply they cross, and how far out their nails stand. */
export function stringsWords({ strings, crossings, uncrossed }: StringPlan, units: Units): string[] {
  const clear = formatLength(NAIL_CLEARANCE, units);
  return [
    ...(crossings.length > 0
      ? [
          `${strings.length} strings. Two cross over ${uncrossed.length === 0 ? 'every hole' : `${crossings.length} holes`}${squareWords(crossings)}.`,
        ]
      : []),
    ...(strings.length > crossings.length && strings.length >= MANY_STRINGS
      ? [
          'These holes share few lines, so that it takes more strings than there are holes: two pairs of offset stakes at each are less work.',
        ]
      : []),
    ...(uncrossed.length > 0
      ? [
          `Over ${uncrossed.length === 1 ? 'hole' : 'holes'} ${listWords(uncrossed)} no two strings find clear ground for their nails: use offset stakes there, or tapes.`,
        ]
      : []),
    `Each string runs between two nails, on boards ${clear} or more outside every hole. Strings come off while you dig, and go back on their nails.`,
  ];
}

/** Fewer strings than this are put up in an hour, whatever they come to: a morning's work begins here (our choice). */
const MANY_STRINGS = 12;

/** A crossing nearer to a right angle than this is called square: half a degree. */
const SQUARE = (89.5 * Math.PI) / 180;

/** How sharply strings cross: `, square`, `, all at 67°`, `, the flattest at 67°`. */
function squareWords(crossings: StringPlan['crossings']): string {
  const angles = crossings.map(({ angle }) => angle);
  const [least, most] = [Math.min(...angles), Math.max(...angles)];
  if (least >= SQUARE) return ', square';
  return degreesOf(least) === degreesOf(most)
    ? `, all at ${degreesOf(least)}`
    : `, the flattest at ${degreesOf(least)}`;
}

/** Which of the two things that a string can stand for. Never left unsaid. */
export function standsForWords({ standsFor, nails }: LaidString, ground: Ground): string {
  if (standsFor.what === 'centres') return 'This string stands for the CENTRES of the posts.';
  const { half, gap, shift } = standsFor;
  const middle = scale(add(nails[0].site, nails[1].site), 1 / 2);
  const parts = `${small(half, ground.units)} for half a post as it measures, and ${small(gap, ground.units)} of gap`;
  return `This string stands for FACES, not for centres: it lies ${formatLength(half + gap, ground.units)} ${wayWords(middle, shift, ground)} of the centres, ${parts}.`;
}

/** What is to be minded of a long string, and of every one of them. */
export function sagWords({ length, sag }: LaidString, units: Units): string {
  const height = 'Tie both ends at one height, clear of the highest ground, and plumb down from it.';
  if (length < LONG_STRING) return height;
  return `${height} It is long: pulled hard by hand (10 lb) it hangs ${small(sag, units)} in the middle, and wind moves it. Hold it up halfway.`;
}

/** Where a nail goes, where its tapes do not tell it well. */
export function nailDoubtWords(
  nail: NailPlace,
  string: LaidString,
  units: Units,
  inHand: TapeInHand | null,
): string | null {
  const { withinTape, crossing } = nail.pulls;
  if (withinTape && crossing.grade !== 'poor') return null;
  const why = withinTape
    ? `The tapes from A and B cross at only ${degreesOf(Math.min(crossing.angle, Math.PI - crossing.angle))} here.`
    : 'The tape does not reach here from both A and B.';
  const first = nail === string.nails[0];
  const mark = first ? string.marks[0] : string.marks.at(-1);
  if (!mark || string.standsFor.what === 'faces') return `${why} Measure off the string for the centres.`;
  const away = formatLength(readingOn(inHand, first ? mark.at : string.length - mark.at), units);
  return string.marks.length > 1
    ? `${why} Stretch the string over the nails in the stakes, and drive ${nail.label} where it lies, ${away} beyond stake ${mark.hole}.`
    : `${why} Measure ${away} from stake ${mark.hole}.`;
}

/** What a line on the ground has against a nail: that it cannot stand there, or that a house hides it from A or B; else null. */
export function nailGroundWords(
  { label, site }: NailPlace,
  { a, b, lines = [] }: Pick<StringsAsked, 'a' | 'b' | 'lines'>,
): string | null {
  const barring = lines.find((line) => barredBy(line, site) > 0);
  if (barring)
    return `${label} would stand ${barring.kind === 'house' ? 'in' : 'beyond'} ${barring.name}, where no nail can stand: use offset stakes instead.`;
  const hiding = Object.entries({ A: a, B: b }).flatMap(([stake, at]) => {
    const wall = wallBetween(lines, at, site);
    return wall ? [`${wall.name} stands between ${stake} and ${label}`] : [];
  });
  return hiding.length === 0
    ? null
    : `${listWords(hiding)}: no tape goes through it. Stretch the string over the stakes of its holes, and drive ${label} where it lies.`;
}

/** `Strings S1 and S6 cross over it at 67°.` */
export const crossingWords = ({ strings: [one, other], angle }: StringCrossing): string =>
  `Strings ${one} and ${other} cross over it, at ${degreesOf(angle)}.`;

/** An offset pair: each stake with its distance and its way from the hole, as the tape in hand reads it. */
export function offsetWords(
  pair: OffsetPair,
  hole: { readonly label: string; readonly site: Vec },
  ground: Ground,
  inHand: TapeInHand | null,
): string {
  const [one, other] = pair.stakes;
  const read = readingOn(inHand, pair.away);
  const away = formatLength(read, ground.units);
  // Between two ways one of them would say where another stake goes: then both parts are told.
  const goes = ({ label, site }: NailPlace) => {
    const reach = subtract(site, hole.site);
    const move = moveWords(hole.site, scale(reach, read / pair.away), ground);
    return move.includes(' and ') ? `${label} goes ${away} off, ${move}` : `${label} goes ${move}`;
  };
  if (pair.how === 'both-sides') return `${goes(one)}; ${goes(other)}: the centre is halfway.`;
  const twice = formatLength(readingOn(inHand, 2 * pair.away), ground.units);
  return `${goes(one)}; ${other.label} goes ${twice} off the same way, in line: the centre is ${away} from ${one.label}, on its far side from ${other.label}.`;
}
