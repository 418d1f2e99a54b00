import type { ComponentChildren } from 'preact';
import type { HeightPoint } from '../../job/entry-schema.ts';
import { heightPointName } from '../../job/words.ts';
import type { JobView } from '../../judge/view.ts';
import { capital } from '../../judge/words.ts';
import { heightKey } from '../../measure/index.ts';
import { Button, Sheet } from '../../ui/index.ts';

export interface PointSheetProps {
  readonly view: JobView;
  readonly title: string;
  readonly points: readonly HeightPoint[];
  /** The words on a point's button, before its name. */
  readonly before?: string;
  readonly onPick: (on: HeightPoint) => void;
  readonly onClose: () => void;
  /** Stands above the points. */
  readonly children?: ComponentChildren;
}

/** One tap picks a point. */
export function PointSheet({ view, title, points, before, onPick, onClose, children }: PointSheetProps) {
  const words = (on: HeightPoint) => {
    const name = heightPointName(on, view.plan);
    return before === undefined ? capital(name) : `${before} ${name}`;
  };
  return (
    <Sheet title={title} onClose={onClose}>
      {children}
      {points.map((on) => (
        <Button key={heightKey(on)} onPress={() => onPick(on)}>
          {words(on)}
        </Button>
      ))}
    </Sheet>
  );
}
