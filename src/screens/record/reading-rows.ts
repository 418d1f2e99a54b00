import type { EntryOf, Thing } from '../../job/entry-schema.ts';
import { lengthWords } from '../../job/length.ts';
import { isKind } from '../../job/log.ts';
import { endName, thingName } from '../../job/words.ts';
import type { Assessment, OffsetAssessment, PullAssessment } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';
import { capital, small } from '../../judge/words.ts';
import { CRITICAL, readingOn, tapeOf } from '../../measure/index.ts';
import { formatLength } from '../../units/index.ts';
import type { PaperTable } from '../build/paper-table.tsx';
import { NOTHING_YET } from './record-rows.ts';

/** What the columns of both tables mean, for whoever never saw such a table. */
export const READINGS_MEAN = [
  'Should read: what all readings together make of it, for the same tape held in the same way. Off by: what was read, less that.',
  'Guarded: how much of a misreading would stay in that one reading for all to see. The rest would go into the places unseen; at none, all of it.',
  `Against luck: how far it is off, in what luck alone makes of such a reading. Luck goes beyond ${CRITICAL.toFixed(1)} once in a thousand readings; beyond that it is looked into.`,
  'Shows from: the smallest misreading that would be noticed in it, four times in five.',
] as const;

const HEADS = ['Read', 'Should read', 'Off by', 'Guarded', 'Against luck', 'Shows from'] as const;

/** Every tape pull that was used, with what the adjustment says of it, in the order of the log. */
export function pullsTable(view: JobView, { pulls }: Pick<Assessment, 'pulls'>): PaperTable {
  const rows = pulls.flatMap((told, i) => {
    const body = view.pullBodies.get(told.entry)?.body;
    if (!body) return [];
    const ends = `${endName(body.from, view.plan)} to ${endName(body.to, view.plan)}`;
    return [[nameOf(i, ends), lengthWords(body.reading), ...cells(view, told, told.predicted, LONG)]];
  });
  return { caption: 'Tape pulls', nameHead: 'Pull', heads: HEADS, longNames: true, rows };
}

/** The same of what was measured off strings: a row for what was read along, and one for what was read square off it. */
export function offsetsTable(view: JobView, { offsets }: Pick<Assessment, 'offsets'>): PaperTable {
  const bodies = new Map(
    view.entries.flatMap((entry) => (isKind(entry, 'offset') ? [[entry.id, entry.body] as const] : [])),
  );
  const rows = offsets.flatMap((told, i) => {
    const body = bodies.get(told.entry);
    return body ? [[nameOf(i, offString(view, body)), ...offsetCells(view, told, body)]] : [];
  });
  return { caption: 'Measured off strings', nameHead: 'String', heads: HEADS, longNames: true, rows };
}

/** A number first: the same two things may have been pulled between twice. */
const nameOf = (i: number, what: string): string => `${i + 1}. ${capital(what)}`;

type OffsetBody = EntryOf<'offset'>['body'];

const offString = ({ plan }: JobView, { from, to, of }: OffsetBody): string => {
  const [begin, end] = [from, to].map((thing: Thing) => thingName(thing, plan));
  return `${endName(of, plan)} off ${begin} to ${end}`;
};

function offsetCells(view: JobView, told: OffsetAssessment, body: OffsetBody): string[] {
  const hand = tapeOf(body, view.plan.instruments) ?? null;
  const predicted = Math.sign(told.predicted) * readingOn(hand, Math.abs(told.predicted));
  if (told.part === 'station') {
    const read = body.station ? `${lengthWords(body.station)} along` : NOTHING_YET;
    return [read, ...cells(view, told, predicted, LONG)];
  }
  const read = body.side === 'on' || !body.offset ? 'on it' : `${lengthWords(body.offset)} ${body.side}`;
  return [read, ...cells(view, told, predicted, LEFT)];
}

/** What a residual above and below nothing is called. */
const LONG = { above: 'long', below: 'short', sided: false } as const;
const LEFT = { above: 'left', below: 'right', sided: true } as const;

const LOOKS_MISREAD = ', looks misread';

/** Names of the rows that tell of a reading believed wrong: among many they are not to be looked for. */
export const suspectNames = (tables: readonly PaperTable[]): string[] =>
  tables
    .flatMap(({ rows }) => rows)
    .filter((row) => row.some((cell) => cell.endsWith(LOOKS_MISREAD)))
    .map(([name = '']) => name);

function cells(
  { plan: { units } }: JobView,
  { residual, redundancy, standardised, smallestCaught, suspect }: PullAssessment,
  predicted: number,
  { above, below, sided }: typeof LONG | typeof LEFT,
): string[] {
  const length = formatLength(Math.abs(predicted), units);
  const off = small(Math.abs(residual), units);
  const none = small(0, units);
  const guarded = smallestCaught !== null;
  return [
    sided && length !== formatLength(0, units) ? `${length} ${predicted > 0 ? above : below}` : length,
    `${off === none ? 'nothing' : `${off} ${residual > 0 ? above : below}`}${suspect ? LOOKS_MISREAD : ''}`,
    guarded ? `${Math.round(redundancy * 100)} %` : 'none',
    guarded ? standardised.toFixed(1) : NOTHING_YET,
    guarded ? small(smallestCaught, units) : 'nothing shows',
  ];
}
