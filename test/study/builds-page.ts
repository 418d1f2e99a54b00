import { type Builds, MOST_COUNTED } from './builds.ts';
import { table } from './page.ts';
import { percent } from './rows.ts';
import type { Share } from './share.ts';

/** A bar of the builds: what is measured, and what is asked of it. */
export interface BuildBar {
  readonly what: string;
  readonly measured: Share;
  /** At least so much; null where nothing is asked. */
  readonly least: number | null;
}

const POSTS_IN = 0.99;
const CUTS_FIT = 0.95;

export function buildBars({
  ended,
  place,
  plumb,
  height,
  posts,
  whole,
  calledIn,
  inIsIn,
  cuts,
}: Builds): BuildBar[] {
  return [
    { what: 'builds that come to an end', measured: ended, least: 1 },
    { what: 'posts really in place', measured: place, least: null },
    { what: 'posts really plumb', measured: plumb, least: null },
    { what: 'tops really at their height', measured: height, least: null },
    { what: 'posts really in, by all three', measured: posts, least: POSTS_IN },
    { what: 'builds with every post really in', measured: whole, least: POSTS_IN },
    { what: 'posts called in at the end', measured: calledIn, least: null },
    { what: 'called in, really in', measured: inIsIn, least: null },
    ...[...cuts.kinds].map(([kind, { asTold }]) => ({
      what: `cut list, ${kind}: truth within what is told`,
      measured: asTold,
      least: CUTS_FIT,
    })),
    ...[...cuts.kinds].map(([kind, { within }]) => ({
      what: `cut list, ${kind}: truth within 1.96 sigmas`,
      measured: within,
      least: null,
    })),
  ];
}

export const isMissed = ({ measured, least }: BuildBar): boolean =>
  least !== null && !(measured.value >= least);

/** The tables as they are printed, in Markdown. */
export function buildTables(builds: Builds): string {
  const posts = builds.nudges.reduce((sum, each) => sum + each, 0);
  const bars = table([
    ['what', 'measured', 'counts', 'bar', ''],
    ...buildBars(builds).map((bar) => [
      bar.what,
      `${percent(bar.measured.value)} ± ${(100 * bar.measured.halfWidth).toFixed(2)}`,
      `${bar.measured.hits} of ${bar.measured.of}`,
      bar.least === null ? '' : `at least ${percent(bar.least, 0)}`,
      bar.least === null ? '' : isMissed(bar) ? 'FAIL' : 'pass',
    ]),
  ]);
  const pushes = table([
    ['pushes of one post', 'posts', 'share'],
    ...builds.nudges.map((count, times) => [
      times === MOST_COUNTED ? `${times} or more` : String(times),
      String(count),
      percent(count / posts, 1),
    ]),
  ]);
  const work = `${(builds.pushed / posts).toFixed(2)} pushes and ${(builds.readings / posts).toFixed(1)} readings per post, of ${posts} posts and piers.`;
  return [bars, work, pushes].join('\n\n');
}

/** The page that `--save` writes. */
export function buildsPage(builds: Builds, command: string): string {
  return `# What comes of following the cards

Simulated builds whose truth is known, set by what the Set screen asks for and nothing else. Made by

    ${command}

${builds.count} builds from seed ${builds.seed}. The same command makes the same page on every machine. \`±\` is the half-width of a 95 %
interval of the measured share, by builds.

${buildTables(builds)}

${NOTES}`;
}

const NOTES = `## How a build goes

- **Drawing.** One of 64: rings of 4 to 6 posts, some round a pier; grids of 2 × 2 and 3 × 2; in inches and sixteenths, or in
  millimetres. Position tolerance 6, 9 or 12 mm; all else, the tape too, as a new plan has it.
- **Yard.** As in the study of the verdicts: it slopes by up to 1 in 5; every post is first stood anywhere within its tolerance
  and 12 mm more, leans up to its tolerance and 2 mm/m more (a pier 20 mm/m, one sigma), and tops out within its tolerance
  and 6 mm more.
- **Builder.** Takes the card that the Set screen shows, post after post: stands the post, reads the tape, the level and the rod
  with the noise that the plan states of them, and pushes what the card says, as far as it says and that way. The hand is
  off by 2 mm each way at the foot, by 0.7 mm/m of lean, by 2 mm of height (one sigma each); a push at the foot tilts the post
  by 1 mm/m, one at the top shifts its foot by 1 mm. After each push the post is measured anew. It never presses “Leave it so”,
  and goes on until no card asks for anything.
- **End.** What stands is held against the plan's tolerances: the true place, lean and height, not the measured ones. Then the cut
  list is worked out from the readings as they stand in the book, and held against the true posts.

## What is not in it

- Misread tapes, stakes that are knocked, a level that is out of true: the study of the verdicts has the first two.
- Posts that settle or are shifted by the concrete after they were called in.
`;
