import { execFileSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { ROOT } from '../../src/desk/ready.mjs';
import type { Body, Entry } from '../../src/job/entry-schema.ts';
import { assess } from '../../src/judge/assess.ts';
import { type DeskReport, deskReport } from '../../src/judge/desk-report.ts';
import { withoutIdsAndTimes } from './alike.ts';
import { backupIn, EXAMPLE_FILE, planOf, readExample } from './example.ts';
import { Hand } from './hand.ts';
import { enterEntry } from './hand-log.ts';
import { beginJob, enterRing } from './hand-plan.ts';
import { openApp } from './harness.ts';
import { screensSay, stakesSay } from './said.ts';

/** Some 200 lines of the field book, each a few taps. */
const WHOLE_JOB_MS = 900_000;

it(
  'the example’s whole field book, entered by hand, gives what the desk command says of the example file',
  async () => {
    const example = readExample();
    const plan = planOf(example.log);
    const app = await openApp();
    const hand = new Hand(app.page);

    hand.countFor('the plan');
    await beginJob(hand, plan, 'Feet, inches, sixteenths');
    await enterRing(hand, plan);
    for (const entry of asTheAppAsks(example.log)) {
      hand.countFor(subjectOf(entry.body));
      await enterEntry(hand, entry.body, plan);
      if (isTies(entry)) await stakesSay(app.page, assess(until(entry, example.log)));
    }
    console.log(countLines(hand).join('\n'));

    const ofFile = assessAtDesk();
    const byHand = backupIn(await hand.backUp());
    expect(bodiesIn(byHand.log)).toEqual(bodiesIn(asTheAppAsks(example.log)));
    expect(withoutIdsAndTimes(deskReport(byHand.log), byHand.log)).toEqual(
      withoutIdsAndTimes(ofFile, example.log),
    );
    await screensSay(app.page, ofFile);
    await app.picture('journey-record');
  },
  WHOLE_JOB_MS,
);

const isTies = ({ body }: Entry): boolean => body.kind === 'check' && body.item === 'ties';

const until = ({ seq }: Entry, log: readonly Entry[]): Entry[] => log.filter((entry) => entry.seq <= seq);

/**
 * The log without its plan, which is entered field by field. The app asks for the benchmark once a post stands whose top is to be
 * read, the example's crew read it just before.
 */
function asTheAppAsks(log: readonly Entry[]): Entry[] {
  const entered = log.filter(({ body }) => body.kind !== 'plan');
  const early = entered.filter(({ body }) => body.kind === 'rod' && body.on.point === 'benchmark');
  const rest = entered.filter((entry) => !early.includes(entry));
  const firstPost = rest.findIndex(({ body }) => body.kind === 'stand' && body.thing.kind === 'post');
  return [...rest.slice(0, firstPost + 1), ...early, ...rest.slice(firstPost + 1)];
}

/** What was logged, with lengths in metres whatever way they were typed; of the plans only the last. */
function bodiesIn(log: readonly Entry[]): unknown[] {
  const inMetres = (_: string, value: unknown) =>
    typeof value === 'object' && value !== null && 'typed' in value && 'm' in value ? value.m : value;
  return log
    .filter(({ body }) => body.kind !== 'plan')
    .map(({ body }) => JSON.parse(JSON.stringify(body, inMetres)));
}

/** What the taps of this line are counted for. */
function subjectOf(body: Body): string {
  switch (body.kind) {
    case 'pull':
      return holeOf(body.to.thing) ?? 'A and B';
    case 'stand':
      return holeOf(body.thing) ?? 'A and B';
    case 'rod':
      return 'hole' in body.on ? `hole ${body.on.hole}` : 'the benchmark';
    default:
      return 'hole' in body && body.hole !== undefined ? `hole ${body.hole}` : 'A and B';
  }
}

const holeOf = (thing: object): string | null => ('hole' in thing ? `hole ${thing.hole}` : null);

function countLines({ counts, askedBack }: Hand): string[] {
  const all = [...counts.values()].reduce(
    (sum, { taps, keys }) => ({ taps: sum.taps + taps, keys: sum.keys + keys }),
    { taps: 0, keys: 0 },
  );
  return [
    ...[...counts, ['in all', all] as const].map(
      ([name, { taps, keys }]) =>
        `${name.padEnd(14)} ${String(taps).padStart(5)} taps ${String(keys).padStart(5)} keys`,
    ),
    ...askedBack.map((line) => `asked back: ${line}`),
  ];
}

/** The command that anyone at a desk would give. */
function assessAtDesk(): DeskReport {
  const npm = process.env['npm_execpath'];
  const args = ['run', '--silent', 'assess', '--', EXAMPLE_FILE];
  const [command, before] = npm ? [process.execPath, [npm]] : ['npm', []];
  return JSON.parse(execFileSync(command, [...before, ...args], { cwd: ROOT, encoding: 'utf8' }));
}
