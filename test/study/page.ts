import { CHANCES } from './calibration.ts';
import type { Misreadings } from './misreadings.ts';
import { bandsOf, firstBetween, percent, type Row, rowsOf, shapesOf } from './rows.ts';
import type { Share } from './share.ts';
import type { Study } from './study.ts';

/** The study's tables as they are printed, in Markdown, with columns that line up. */
export function tablesOf(study: Study): string {
  return [
    mainTable(rowsOf(study)),
    'Of what was given such a chance of being in, really in, and in brackets the mean of those chances:',
    calibrationTable(study),
    'One inch, by the redundancy of the pull that was misread:',
    bandTable(study),
    'One inch, by what is built:',
    shapeTable(study),
  ].join('\n\n');
}

const measuredWords = (share: Share): string =>
  share.of === 0 ? 'none' : `${percent(share.value)} ± ${(100 * share.halfWidth).toFixed(2)}`;

const mainTable = (rows: readonly Row[]): string =>
  table([
    ['what', 'measured', 'counts', 'bar', 'expected', ''],
    ...rows.map(({ question, measured, bar, expected }) => [
      question,
      measuredWords(measured),
      `${measured.hits} of ${measured.of}`,
      bar?.text ?? '',
      expected,
      bar === null ? '' : bar.holds ? 'pass' : 'FAIL',
    ]),
  ]);

const bandTable = (study: Study): string =>
  misreadingTable(
    'redundancy',
    bandsOf(study).map(({ band, counts }) => [band, counts]),
  );

const shapeTable = (study: Study): string =>
  misreadingTable(
    'shape',
    shapesOf(study).map(({ shape, counts }) => [shape, counts]),
  );

const misreadingTable = (by: string, lines: readonly (readonly [string, Misreadings])[]): string =>
  table([
    [by, 'pulls', 'noticed', 'expected [3]', 'named first', 'expected [4]', 'among those named'],
    ...lines.map(([line, counts]) => [
      line,
      String(counts.noticed.of),
      percent(counts.noticed.value),
      percent(counts.noticedExpected.value),
      percent(counts.first.value),
      firstBetween(counts),
      percent(counts.named.value),
    ]),
  ]);

const calibrationTable = ({ verdicts }: Study): string =>
  table([
    ['chance', ...verdicts.map(({ quantity }) => quantity)],
    ...CHANCES.map((from, i) => [
      `${percent(from, 0)} to ${percent(CHANCES[i + 1] ?? 1, 0)}`,
      ...verdicts.map(({ counts }) => {
        const { isIn, claimed } = counts.calibration.bands[i]!;
        return `${percent(isIn.value, 1)} ± ${(100 * isIn.halfWidth).toFixed(1)} (${percent(claimed.value, 1)})`;
      }),
    ]),
  ]);

/** Rows as a table in Markdown, with columns that line up; the first is its head. */
export function table([head, ...body]: readonly (readonly string[])[]): string {
  if (!head) return '';
  const widths = head.map((_, i) => Math.max(...[head, ...body].map((row) => row[i]!.length)));
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell, i) => cell.padEnd(widths[i]!)).join(' | ')} |`;
  return [line(head), line(widths.map((width) => '-'.repeat(width))), ...body.map(line)].join('\n');
}

/** The page that `--save` writes. */
export function pageOf(study: Study, command: string): string {
  return `# What the verdicts are worth

Simulated jobs whose truth is known, judged by the very functions that the phone uses. Made by

    ${command}

${study.jobs} jobs from seed ${study.seed}. The same command makes the same page on every machine. \`±\` is the half-width of a 95 %
interval of the measured share, by jobs.

${tablesOf(study)}

${NOTES}`;
}

const NOTES = `## How a job is made

- **Drawing.** One of 64: rings of 5 to 12 posts, 1.8 m to 5 m to the centres, some round a pier; grids of 2 × 2 to
  4 × 4, 1.5 m to 3 m apart; in inches and sixteenths, or in millimetres. A and B stand where the tool proposes. Position
  tolerance 6, 9 or 12 mm; plumb and level as the tool's defaults have them.
- **Truth.** A–B 5 mm (one sigma) off the drawing; the yard slopes by up to 1 in 5, any way; stakes 2 to 12 mm (one sigma) off
  their marks. Every post stands anywhere within its position tolerance and 12 mm more, leans within its tolerance and
  2 mm/m more, tops out within its tolerance and 6 mm more: any such place is as likely as any other. So most verdicts are
  hard ones. Careful people set more posts well in, and of what is then called in less is really out.
- **Readings.** Every pull of the tool's own plan for staking and setting (\`checkPulls\`, \`setPulls\`); none, three or six tenths of them along the slope
  with the rise measured, the others level, touching the lower post as high as the ground falls; plumb on four faces, or (a
  fifth of the posts) on two; the rod twice on the benchmark and on each top. Normal noise of the stated sigmas: tape 2 mm and
  0.1 mm/m, level 0.5 mm/m, rod 1.5 mm (1/16″ in jobs in inches). All readings are rounded to the tape's marks; that is part of
  the stated sigma and not added to it.
- **Misreading.** An inch too long or too short in one pull of each job, drawn from those with redundancy 0.1 or more. Besides, in
  every second job a quarter inch in a plumb reading of a post on which four faces were read, and in the others an inch in a rod
  reading. Two readings of one height, or of two faces opposite, can say that one is wrong and never which: both are named.
- **Knocked stake.** In one job of four a third stake C is driven on the far side of A–B, where it is logged to be meant, and tied to both. After the staking A, B
  or C is knocked any way, nobody says so, and A–B–C is pulled again with a pull from A and from B to the hole's
  stake where these cross nearest to square (a stake taken at random names the right one a little less often).

## How the expected figures are made

1. The mean of the tool's own chances of being wrong: 1 − p of what it called in, p of what it called out (JCGM 106:2012,
   clause 7). It takes every true place to be as likely as any other, as here.
2. The chi-square distribution: with 2 degrees of freedom 1 − exp(−2.4477²/2) of places lie within 2.4477 one-sigma ellipses
   when sigma is known; of the global test, p is even between 0 and 1.
3. Baarda, "A testing procedure for use in geodetic networks" (1968): α₀ = 0.001 beyond 3.2905 in a clean job; with a misreading
   ∇ the standardised residual is normal about ∇√r/σ, so its own test notices with Φ(∇√r/σ − 3.2905). Tests of other pulls
   only add to that.
4. The misread pull loses to another, whose test is correlated with its own by ρ, with Φ(−(∇√r/σ) √((1 − |ρ|)/2)); to all
   others together with at least the likeliest of these and at most their sum (derived, not published). Only pulls are
   counted as rivals; a plumb reading on a post that was touched above the ground is one too. Where one spare
   pull guards a place, ρ = 1: the readings can say that one is wrong and never which, and the tool names them all.
5. Šidák, Journal of the American Statistical Association 62 (1967), from memory: dependent tests raise an alarm somewhere
   no more often than as many independent ones, 1 − (1 − α₀)ⁿ.
6. Non-central chi-square with 2 degrees of freedom at α₀ = 0.001 (Abramowitz & Stegun, 1964, 26.4.25; Koch, "Parameter
   Estimation and Hypothesis Testing in Linear Models", ch. 3), λ being the χ² that exact readings leave. It tells of one test
   that knows which stake and when.

## Where it falls short

- **Named first** is no better where few pulls guard a place: half of what is lost lies in pulls with redundancy below 0.3, and
  three quarters of it on rings round a pier. A fifth pull to every post would name 99.7 %, by theory, for two more pulls to every five posts.
- **Noticed and not named at all** is about one in ten thousand: luck in other readings then makes another pull by far the
  likelier to be wrong.
- **The Set screen** asks a careful user for less than the pulls that are read here: it goes on to the next post once no misread
  pull could move this one unseen. What looks misread then is more often one of two or three, and the screen asks for the pull
  that tells them apart.

## What is not in it

- A tape that is wrong by the same share in every pull, a post turned on its foot, and a tape held along a slope of unknown rise:
  here every sigma is what the plan says it is.
`;
