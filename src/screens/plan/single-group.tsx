import { Button } from '../../ui/index.ts';
import { Group } from './group.tsx';
import type { GroupFor } from './group-for.ts';
import { ownWords, singleLine } from './plan-text.ts';

export interface SingleGroupProps extends Pick<GroupFor, 'plan'> {
  readonly onHole: (label: string) => void;
}

/** Holes that have something of their own. */
export function SingleGroup({ plan, onHole }: SingleGroupProps) {
  const own = Object.entries(plan.overrides);
  return (
    <Group title="Single holes" line={singleLine(plan)}>
      <p>Tap a hole in the drawing to give it a size or a height of its own.</p>
      {own.map(([label, override]) => (
        <Button key={label} onPress={() => onHole(label)}>
          Hole {label}: {ownWords(override, plan.units)}
        </Button>
      ))}
    </Group>
  );
}
