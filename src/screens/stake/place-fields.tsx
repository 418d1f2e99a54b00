import type { Length } from '../../job/length.ts';
import type { PlanPlace } from '../../job/place-schema.ts';
import { ChoiceField, LengthField } from '../../ui/index.ts';
import type { Units } from '../../units/index.ts';
import { signed, unsigned } from './place-words.ts';

/** A signed length in the making: a size, and which way it counts; null until the user has said so. */
interface Part {
  readonly size: Length | null;
  readonly negative: boolean | null;
}

/** A place in the making, from the plan's centre. */
export interface PlaceParts {
  readonly right: Part;
  readonly front: Part;
}

/** As it is placed now; before that nothing: a side that nobody chose would turn the plan unseen. */
export function startPlace(at?: PlanPlace): PlaceParts {
  const part = (length: Length | undefined): Part =>
    length ? unsigned(length) : { size: null, negative: null };
  return { right: part(at?.right), front: part(at?.front) };
}

/** The place, once all of it is filled in. */
export function placeIn({ right, front }: PlaceParts): PlanPlace | null {
  const [x, y] = [right, front].map((part) =>
    part.size && hasWay(part) ? signed(part.size, part.negative ?? false) : null,
  );
  return x && y ? { right: x, front: y } : null;
}

/** Nothing lies neither way. */
const hasWay = ({ size, negative }: Part): boolean => negative !== null || size?.m === 0;

/** The first thing that is not filled in; empty when all is. */
export function placeMissing(name: string, parts: PlaceParts): string {
  for (const way of ['right', 'front'] as const) {
    if (parts[way].size === null)
      return `${sizeLabel(name, way)}: it is empty; type a length, 0 if it lies on the line.`;
    if (!hasWay(parts[way])) return `${wayLabel(name, way)}: nothing is chosen; choose one.`;
  }
  return '';
}

const WAYS = {
  right: {
    size: 'to the side of the centre',
    way: 'left or right',
    positive: 'right',
    negative: 'left',
  },
  front: {
    size: 'before or behind the centre',
    way: 'in front or behind',
    positive: 'in front',
    negative: 'behind',
  },
} as const;
type Way = keyof typeof WAYS;

const sizeLabel = (name: string, way: Way): string => `${name}: how far ${WAYS[way].size}`;
const wayLabel = (name: string, way: Way): string =>
  `${name}: which way, ${WAYS[way].way}, as you face the plan’s front`;

export interface PlaceFieldsProps {
  /** `A`, `stake C`. */
  readonly name: string;
  readonly units: Units;
  readonly parts: PlaceParts;
  readonly onParts: (parts: PlaceParts) => void;
}

/** Two lengths, and which way each counts as you face the plan's front: nobody has to think of a sign. */
export function PlaceFields({ name, units, parts, onParts }: PlaceFieldsProps) {
  return (['right', 'front'] as const).map((way) => {
    const put = (change: Partial<Part>) => onParts({ ...parts, [way]: { ...parts[way], ...change } });
    const { negative } = parts[way];
    return (
      <div key={way} class="field">
        <LengthField
          label={sizeLabel(name, way)}
          value={parts[way].size}
          units={units}
          bounds={{ min: 0 }}
          onChange={(size) => put({ size })}
        />
        <ChoiceField
          label={wayLabel(name, way)}
          value={negative === null ? null : negative ? 'negative' : 'positive'}
          choices={[
            { value: 'negative', label: WAYS[way].negative },
            { value: 'positive', label: WAYS[way].positive },
          ]}
          onChange={(value) => put({ negative: value === 'negative' })}
        />
      </div>
    );
  });
}
