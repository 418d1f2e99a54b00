import { length, type SitePoint, scale } from '../geometry/point.ts';
import type { Entry, Thing } from '../job/entry-schema.ts';
import { thingKey } from '../job/log.ts';
import { endName } from '../job/words.ts';
import { measure } from '../measure/measure.ts';
import { readingOn } from '../measure/taped.ts';
import type { Measured, Move, Moves } from '../measure/types.ts';
import { formatLength } from '../units/index.ts';
import { principalAxes } from './chance.ts';
import { tellingPulls } from './moved-telling.ts';
import { movedWords, oddsWords, shiftWords } from './moved-words.ts';
import { HALF_WIDTH_95 } from './normal.ts';
import { pullPlan } from './pull-ends.ts';
import { quotedReadings } from './reading-words.ts';
import { lineOf } from './shaken.ts';
import { holdFrom } from './stake-holds.ts';
import type { MovedAssessment, MovedStake } from './types.ts';
import type { JobView } from './view.ts';
import { capital, listWords, small } from './words.ts';

/** More suspects than this say no more than that some stake has moved. */
const MOST_SUSPECTS = 3;

/** What is believed of a stake that moved without anybody's saying so; null when nothing says so. */
export function movedAssessment(view: JobView): MovedAssessment | null {
  const { moves } = view;
  if (!moves || !view.laid) return null;
  const suspects = moves.moves.slice(0, MOST_SUSPECTS).map((move) => suspectOf(view, move));
  const tells = isSettled(moves) ? [] : tellingPulls(view, suspects);
  const cure = isSettled(moves) ? '' : tells.length > 0 ? tellsWords(view, tells) : NOTHING_STILL;
  const text = [whatWords(view, moves, suspects), cure].filter((part) => part !== '').join(' ');
  return { suspects, orMisread: moves.orMisread, tells, text };
}

/** One stake, by how much is known, and no misread pull would explain it. */
const isSettled = ({ moves, orMisread }: Moves): boolean =>
  moves.length === 1 && moves[0]!.by !== null && !orMisread;

/** `Pull A to stake 2 and B to stake 2: they tell.` */
function tellsWords(view: JobView, tells: MovedAssessment['tells']): string {
  const lines = tells.map(({ from, to }) => `${endName(from, view.plan)} to ${endName(to, view.plan)}`);
  return `Pull ${listWords(lines)}: ${lines.length > 1 ? 'they tell' : 'that tells'}.`;
}

const NOTHING_STILL =
  'Pull it again, to show a misread pull. Which stake it was would show only in pulls to something that stood still, and nothing else is pulled to.';

function suspectOf(view: JobView, move: Move): MovedStake {
  const { stake, since, by, covariance } = move;
  const supposed = supposing(view, move);
  const stood = standsOf(supposed, stake).at(-2)?.fix?.place ?? null;
  const { units } = view.plan;
  const other = lookedAt(supposed, stake);
  const words = (at: SitePoint, shift: SitePoint) => (other ? shiftWords(at, shift, other, units) : null);
  const uncertainty = covariance ? HALF_WIDTH_95 * principalAxes(covariance).major : 0;
  return {
    stake,
    since,
    shift: by && {
      by,
      uncertainty,
      words: words(stood ?? { x: 0, y: 0 }, by) ?? small(length(by), units),
    },
    stood,
    putBack: by && stood ? putBack(view, supposed, stake, stood, words(stood, scale(by, -1))) : null,
  };
}

/** The job as it would be measured if the stake were known to have moved. */
function supposing(view: JobView, { stake, since }: Move): Measured {
  const last = view.entries.reduce((most, { seq }) => Math.max(most, seq), 0);
  const supposed: Entry = {
    id: 'supposed-move',
    seq: last + 1,
    at: new Date(view.book.latest).toISOString(),
    body: { kind: 'stand', thing: stake, event: 'moved', since },
  };
  const { holes, baseline, references } = view.laid!;
  return measure([...view.entries, supposed], holes, baseline, view.plan.instruments, references);
}

const standsOf = ({ points }: Measured, thing: Thing) => {
  const key = thingKey(thing);
  return points.filter((point) => thingKey(point.thing) === key).sort((p, q) => p.stand - q.stand);
};

/** A stake is looked at from another: B from A, A from all others. */
function lookedAt(measured: Measured, stake: Thing): { name: string; place: SitePoint } | null {
  const label = stake.kind === 'stake' && stake.label === 'A' ? 'B' : 'A';
  const place = standsOf(measured, { kind: 'stake', label }).at(-1)?.fix?.place;
  return place ? { name: label, place } : null;
}

function putBack(
  view: JobView,
  supposed: Measured,
  stake: Thing,
  stood: SitePoint,
  way: string | null,
): MovedStake['putBack'] {
  const holds = holdFrom(view, supposed, stake, stood);
  if (holds.length < 2) return null;
  const readings = holds.map(({ thing, place }) => {
    const { from, to, expected } = pullPlan(view, thing, place, stake, stood);
    return { from, to, reading: expected };
  });
  const held = readings.map(
    ({ from, reading }) =>
      `${formatLength(readingOn(view.inHand, reading), view.plan.units)} from ${endName(from, view.plan)}`,
  );
  const move = way === null ? '' : ` ${way}`;
  return {
    words: `Drive it back${move}: it stands where it stood when level tapes read ${listWords(held)}.`,
    readings,
  };
}

function whatWords(view: JobView, moves: Moves, suspects: readonly MovedStake[]): string {
  const [first, second] = suspects;
  if (!first) return '';
  const who = movedWords(suspects.map(({ stake }) => stake));
  const misread = moves.orMisread ? ', or a pull is misread' : '';
  const { shift } = first;
  if (second || !shift) {
    const open = second ? 'which' : 'how far';
    return `${changeWords(view, first.since)}: ${who}${misread}, and the pulls do not tell ${open}.`;
  }
  const [since] = quotedReadings(view, [first.since]);
  const known = small(shift.uncertainty, view.plan.units);
  const sure = moves.orMisread
    ? 'A misread pull would explain it as well.'
    : `Sure: ${oddsWords(moves.odds)} against any other stake or one misread pull.`;
  return `${capital(who)}${misread}: since ${since} it stands elsewhere, ${shift.words}, known to ± ${known}. ${sure}`;
}

/** `A to B now reads 20 mm longer than before`; of a line that was never pulled before, that it does not fit. */
function changeWords(view: JobView, since: string): string {
  const last = view.pullBodies.get(since);
  const results = new Map(view.measured.pulls.map((result) => [result.entry, result]));
  const line = last ? lineOf(last) : '';
  const before = [...view.pullBodies.values()].filter((pull) => pull !== last && lineOf(pull) === line);
  const [was, now] = [results.get(before.at(0)?.id ?? ''), results.get(since)];
  if (!last || !was || !now)
    return `${quotedReadings(view, [since])[0] ?? 'A pull'} does not fit the pulls before`;
  const change = now.residual - was.residual;
  const ends = [last.body.from, last.body.to].map((end) => endName(end, view.plan));
  return `${capital(listWords(ends, 'to'))} now reads ${small(change, view.plan.units)} ${change > 0 ? 'longer' : 'shorter'} than before`;
}
