import { FIELDS } from '../../plan/index.ts';
import { LengthField } from '../../ui/index.ts';
import { fromDefault } from './default-hint.ts';
import { Group } from './group.tsx';
import type { GroupFor } from './group-for.ts';
import { ANY_HEIGHT } from './limits.ts';
import { withEach, withPier } from './plan-edits.ts';
import { heightsLine } from './plan-text.ts';

const BELOW = 'Above the benchmark; a minus in front puts it below.';

/** How high the tops are to be. */
export function HeightsGroup({ plan, change }: GroupFor) {
  const { each, pier, units, shape } = plan;
  return (
    <Group title="Heights" line={heightsLine(plan)}>
      <p>
        The benchmark is one mark that stays put, such as a nail in a tree or a corner of a step; all heights
        start from it.
      </p>
      <LengthField
        label={FIELDS.top}
        hint={BELOW}
        value={each.top}
        units={units}
        bounds={ANY_HEIGHT}
        {...fromDefault('each.top', each.top, units)}
        onChange={(top) => change((before) => withEach(before, { top }))}
      />
      {shape.kind === 'ring' && shape.pier && (
        <LengthField
          label={`${FIELDS.top} of P`}
          hint={BELOW}
          value={pier.top}
          units={units}
          bounds={ANY_HEIGHT}
          {...fromDefault('pier.top', pier.top, units)}
          onChange={(top) => change((before) => withPier(before, { top }))}
        />
      )}
    </Group>
  );
}
