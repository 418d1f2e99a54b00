import type { Entry, Thing } from '../job/entry-schema.ts';
import { isKind, thingKey } from '../job/log.ts';
import { GUARDED_FROM } from '../measure/reliability.ts';
import type { PullResult, Suspicion } from '../measure/types.ts';
import { formatLength } from '../units/index.ts';
import { REPEATS_AGREE } from './plumb-repeats.ts';
import { lackWords } from './position.ts';
import { quotedReadings, readingWords } from './reading-words.ts';
import type { Finding, MovedAssessment } from './types.ts';
import { type JobView, pullsBetween } from './view.ts';
import { listWords, small } from './words.ts';

/** As for single pulls, one clean job in a thousand fails by luck alone. */
const GLOBAL_TEST_FAILS = 0.001;

/**
 * Trouble that no single hole owns, but for shape.
 *
 * @param best the job without the readings that are believed wrong
 * @param moved what is believed of a stake that moved
 * @param teller for pulls that cannot be told apart: the pull that would tell, as the end of a sentence
 */
export function findingsOf(
  view: JobView,
  best: JobView,
  moved: MovedAssessment | null,
  teller: (suspicion: Suspicion) => string,
): Finding[] {
  const misread = view.measured.suspicions
    .filter(({ entries }) => !entries.every((entry) => isExplained(view, moved, entry)))
    .map((suspicion) => misreading(view, suspicion, teller));
  return [
    ...misread,
    ...(moved ? movedFinding(moved) : [repulledBaseline(view), offBaseline(best)]).filter(
      (finding) => finding !== null,
    ),
    ...globalTest(view, moved !== null || misread.length > 0),
    ...undetermined(view),
    ...unused(view),
  ];
}

/** What a stake that moved explains is no misreading: a pull from it since, where nothing else would explain that as well. */
function isExplained(view: JobView, moved: MovedAssessment | null, entry: string): boolean {
  const pull = view.pullBodies.get(entry);
  if (!moved || moved.orMisread || !pull) return false;
  const ends = [pull.body.from, pull.body.to].map(({ thing }) => thingKey(thing));
  return moved.suspects.some(({ stake }) => ends.includes(thingKey(stake)));
}

const movedFinding = ({ text, suspects }: MovedAssessment): Finding[] => [
  { code: 'moved-stake', text, entries: [...new Set(suspects.map(({ since }) => since))] },
];

function misreading(view: JobView, suspicion: Suspicion, teller: (suspicion: Suspicion) => string): Finding {
  const readings = view.entries.filter(({ id }) => suspicion.entries.includes(id));
  const [first] = readings;
  const text =
    readings.length === 1 && first
      ? `${readingWords(view, first)}: ${slipWords(view, first, suspicion.misreading)}. Take it again, and strike the wrong one.`
      : `One of these is misread, and nothing yet tells which: ${listWords(quotedReadings(view, suspicion.entries), 'or')}. ${teller(suspicion)}`.trim();
  return { code: 'misreading', text, entries: suspicion.entries };
}

function slipWords(view: JobView, entry: Entry, misreading: number): string {
  const size = small(misreading, view.plan.units);
  if (!isKind(entry, 'pull')) return `looks misread by ${size}`;
  return `looks ${size} too ${misreading > 0 ? 'long' : 'short'}`;
}

const STAKE_A = { kind: 'stake', label: 'A' } as const;
const STAKE_B = { kind: 'stake', label: 'B' } as const;

/** How A–B reads now against before. Metres. */
export interface BaselineChange {
  /** The last reading less the mean of those before, both as corrected. */
  readonly change: number;
  /** More than this is no luck. */
  readonly allowed: number;
  readonly entries: readonly string[];
}

/** What A–B pulled again tells; null until it was pulled twice as the stakes stand now. */
export function baselineChange(view: JobView): BaselineChange | null {
  const pulls = pullsBetween(view, STAKE_A, STAKE_B);
  const last = pulls.at(-1);
  const before = pulls.slice(0, -1);
  if (!last || before.length === 0) return null;
  const mean = before.reduce((sum, pull) => sum + pull.residual, 0) / before.length;
  return {
    change: last.residual - mean,
    allowed: REPEATS_AGREE * last.sigma * Math.sqrt(1 + 1 / before.length),
    entries: pulls.map((pull: PullResult) => pull.entry),
  };
}

/** A–B pulled again that no longer reads what it did: one of the stakes has moved, or one reading is wrong. */
export function repulledBaseline(view: JobView): Finding | null {
  const found = baselineChange(view);
  if (!found || Math.abs(found.change) <= found.allowed) return null;
  const { change, entries } = found;
  const text = `A to B now reads ${small(change, view.plan.units)} ${change > 0 ? 'longer' : 'shorter'} than before: a stake has moved, or a pull was misread. Pull A to B again, and from each of them to something that stood still.`;
  return { code: 'baseline', text, entries };
}

/** B does not stand where the plan has it. Lengths from B follow it; a foot misread at the first pull would be followed too. */
function offBaseline(view: JobView): Finding | null {
  const { baseline } = view.measured;
  const pulls = pullsBetween(view, STAKE_A, STAKE_B);
  // Pulled twice, or guarded by other pulls, it is where it is: where they do not agree, that is said by itself.
  const guarded = pulls.length > 1 || pulls.some(({ redundancy }) => redundancy >= GUARDED_FROM);
  if (!baseline || !view.laid || guarded) return null;
  const off = baseline.length - view.laid.baseline;
  const allowed = Math.max(view.plan.tolerances.position.m, REPEATS_AGREE * baseline.sigma);
  if (Math.abs(off) <= allowed) return null;
  const { units } = view.plan;
  const text = `A to B is ${formatLength(baseline.length, units)}, ${small(off, units)} ${off > 0 ? 'longer' : 'shorter'} than planned. The lengths from B are worked out from where B really is; pull A to B once more to be sure of it.`;
  return { code: 'baseline', text, entries: pulls.map((pull) => pull.entry) };
}

function globalTest(view: JobView, explained: boolean): Finding[] {
  if (!view.measured.settled)
    return [
      {
        code: 'global-test',
        text: 'The pulls contradict one another so badly that no places fit them: trust none. Look for a pull with the wrong hole or face, and strike it.',
        entries: [],
      },
    ];
  const { chance, degreesOfFreedom } = view.measured.globalTest;
  if (explained || degreesOfFreedom === 0 || chance >= GLOBAL_TEST_FAILS) return [];
  const text =
    'The pulls disagree with one another more than this tape should, and no single one stands out. See that every pull says rightly how the tape was held and what it touched; pull A to B again; or the tape is worse than the plan says.';
  return [{ code: 'global-test', text, entries: [] }];
}

/** Things that were pulled to, and yet have no place. Those without any pull are not trouble, only work to do. */
function undetermined(view: JobView): Finding[] {
  return [...view.points.values()]
    .filter((point) => point.lack !== null && point.lack.reason !== 'no-pulls')
    .map((point) => ({
      thing: point.thing,
      code: 'undetermined' as const,
      text: lackWords(view, point.thing, point.lack),
      entries: [...view.pullBodies.values()]
        .filter(({ body }) =>
          [body.from, body.to].some((end) => thingKey(end.thing) === thingKey(point.thing)),
        )
        .map((entry) => entry.id),
    }))
    .filter(({ thing, entries }) => entries.length > 0 || !holdsStringsOnly(thing))
    .map(({ code, text, entries }) => ({ code, text, entries }));
}

/** A nail or a further stake serves as the end of a string without a place of its own: a tie needs no more. */
const holdsStringsOnly = (thing: Thing): boolean =>
  thing.kind === 'nail' || (thing.kind === 'stake' && thing.label !== 'A' && thing.label !== 'B');

const UNUSED_WORDS = {
  'same-thing': 'both ends touch the same thing',
  'not-in-plan': 'the plan has no such hole now',
  'no-size': 'what it touched has no such side',
  'no-length': 'no tape or rod reads that',
  'no-lean': 'no post leans further than 45°',
  'level-and-not': 'it says that neither is higher, and gives a difference between them',
  'no-tape': 'the plan lists no such tape now, or says of it what cannot be',
} as const;

/** Readings that stand and could not be used. */
function unused(view: JobView): Finding[] {
  return view.measured.unused.flatMap(({ entry: id, reason }) => {
    const entry = view.entries.find((candidate) => candidate.id === id);
    if (!entry) return [];
    const text = `Not used: “${readingWords(view, entry)}”, for ${UNUSED_WORDS[reason]}. ${reason === 'no-tape' ? 'Put that right in the plan, or strike it' : 'Strike it'}, and log it right.`;
    return [{ code: 'input' as const, text, entries: [id] }];
  });
}
