import { plannedGaps } from '../../../judge/setback.ts';
import { groundLines, type LaidOn, layPlan } from '../../../plan/index.ts';
import { judgeStakes } from '../../../stakeout/index.ts';
import { Problem } from '../../../ui/index.ts';
import { useJobBook } from '../../job-book.ts';
import { PlacePreview } from '../place-preview.tsx';
import { placesIn } from './use-lay.ts';

/** The plan as it would lie: how well each hole would be fixed, what is wrong with it, and what comes too near a line. */
export function LayPreview({ on }: { readonly on: LaidOn }) {
  const { situation } = useJobBook();
  const { plan, holes } = situation;
  if (!plan) return null;
  const { site, a, b } = placesIn(on);
  const laid = layPlan(site, holes);
  const { lines } = groundLines(plan, holes, laid.ok ? laid.value : null);
  const short = lines.map((line) => plannedGaps(plan, holes, line).short).filter((text) => text !== '');
  return (
    <>
      {short.map((text) => (
        <Problem key={text} text={text} />
      ))}
      <PlacePreview choice={judgeStakes(a, b, holes, plan.instruments, plan.units, lines)} lines={lines} />
    </>
  );
}
