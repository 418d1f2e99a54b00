import type { Check } from '../../job/entry-schema.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { Button } from '../../ui/index.ts';
import { useLog } from '../use-log.ts';
import './pour.css';

/** What a person vouches for before a pour, in the order that it is done. */
const TICKS: readonly { readonly item: Check; readonly words: string }[] = [
  { item: 'clean', words: 'The bottom is clean' },
  { item: 'gravel', words: 'The gravel is in' },
  { item: 'braced', words: 'It is braced two ways' },
  { item: 'inspection', words: 'Inspected, or none is asked for' },
  { item: 'weather', words: 'The weather is fit for concrete' },
];

/** A button for each thing that is missing and that only eyes can tell. Each is logged for this hole. */
export function Ticks({ hole }: { readonly hole: HoleAssessment }) {
  const { log } = useLog();
  const red = new Set(hole.pourGate.items.filter(({ green }) => !green).map(({ item }) => item));
  const missing = TICKS.filter(({ item }) => red.has(item));
  if (missing.length === 0) return null;
  return (
    <section class="ticks" aria-label={`Look, then tap, for hole ${hole.hole}`}>
      {missing.map(({ item, words }) => (
        <Button key={item} onPress={() => void log({ kind: 'check', hole: hole.hole, item, done: true })}>
          {words}
        </Button>
      ))}
    </section>
  );
}
