import { plannedGaps } from '../../../judge/setback.ts';
import type { LaidOn } from '../../../plan/index.ts';
import { Problem } from '../../../ui/index.ts';
import { useJobBook } from '../../job-book.ts';
import { PlacePreview } from '../place-preview.tsx';
import { laidChoice } from './lay-price.ts';

/** The plan as it would lie: how well each hole would be fixed, what is wrong with it, and what comes too near a line. */
export function LayPreview({ on }: { readonly on: LaidOn }) {
  const { situation } = useJobBook();
  const { plan, holes } = situation;
  if (!plan) return null;
  const { choice, lines } = laidChoice(plan, holes, on);
  const short = lines.map((line) => plannedGaps(plan, holes, line).short).filter((text) => text !== '');
  return (
    <>
      {short.map((text) => (
        <Problem key={text} text={text} />
      ))}
      <PlacePreview choice={choice} lines={lines} />
    </>
  );
}
