import type { GateItem } from '../judge/types.ts';
import { VerdictShape } from './mark-shapes.tsx';
import { unbroken } from './unbroken.ts';

export interface GateListProps {
  /** Accessible name: `Before concrete goes into hole 4`. */
  readonly label: string;
  readonly items: readonly Pick<GateItem, 'item' | 'asked' | 'green' | 'text'>[];
}

/** What must be so before a hole is dug or concrete goes in. Missing items come first. */
export function GateList({ label, items }: GateListProps) {
  const missingFirst = [...items].sort((p, q) => Number(p.green) - Number(q.green));
  return (
    <ul class="gate-list" aria-label={label}>
      {missingFirst.map(({ item, asked, green, text }) => (
        <li key={`${item}:${asked ?? ''}`} class={green ? 'gate-item' : 'gate-item gate-item-missing'}>
          <svg class="verdict-shape" viewBox="-14 -14 28 28" aria-hidden="true" focusable="false">
            <VerdictShape x={0} y={0} r={12} verdict={green ? 'in' : 'out'} />
          </svg>
          <span>
            <strong>{green ? 'done' : 'missing'}:</strong> {unbroken(text)}
          </span>
        </li>
      ))}
    </ul>
  );
}
