import { useMemo, useState } from 'preact/hooks';
import type { HeightPoint } from '../../job/entry-schema.ts';
import { type JobView, viewOf } from '../../judge/view.ts';
import { CheckField } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { DifferenceFlow } from './difference-flow.tsx';
import { heightPoints, newTurningPoint } from './height-points.ts';
import type { HeightsProps, OpenHeightsProps } from './heights-props.ts';
import { HeightsSheet } from './heights-sheet.tsx';
import { useLevelSetup } from './level-setup.ts';
import { PointSheet } from './point-sheet.tsx';
import { rodAtTarget } from './rod-belief.ts';
import { RodFlow } from './rod-flow.tsx';
import { TwoPegFlow } from './two-peg-flow.tsx';

/** The view is worked out only once it is wanted: most of the time nobody asks for heights. */
export function OpenHeights(props: OpenHeightsProps) {
  const { situation } = useJobBook();
  const view = useMemo(() => viewOf(situation), [situation]);
  return view && <ShownHeights view={view} {...props} />;
}

function ShownHeights({ view, hole, open, onOpen }: OpenHeightsProps & { readonly view: JobView }) {
  const { setup, onNewSetup } = useLevelSetup(view);
  const list = () => onOpen('list');
  switch (open) {
    case 'list':
      return (
        <HeightsSheet
          view={view}
          setup={setup}
          onNewSetup={onNewSetup}
          onRod={() => onOpen('rod')}
          onDifference={() => onOpen('difference')}
          onTwoPeg={() => onOpen('two-peg')}
          onClose={() => onOpen(null)}
        />
      );
    case 'rod':
      return <AnyRod view={view} hole={hole} setup={setup} onClose={list} />;
    case 'difference':
      return <DifferenceFlow view={view} hole={hole} onClose={list} />;
    case 'two-peg':
      return <TwoPegFlow view={view} onClose={list} />;
  }
}

interface AnyRodProps extends HeightsProps {
  readonly view: JobView;
  readonly setup: string;
  readonly onClose: () => void;
}

/** The rod on any point, upright or upside down, with or without how far off it is. */
function AnyRod({ view, hole, setup, onClose }: AnyRodProps) {
  const [on, setOn] = useState<HeightPoint | null>(null);
  const [inverted, setInverted] = useState(false);
  const [asksSight, setAsksSight] = useState(false);
  if (on)
    return (
      <RodFlow
        view={view}
        on={on}
        setup={setup}
        expected={on.point === 'top' && !inverted ? rodAtTarget(view, on.hole, setup) : null}
        inverted={inverted}
        asksSight={asksSight}
        onClose={onClose}
      />
    );
  const turning = newTurningPoint(view);
  return (
    <PointSheet
      view={view}
      title="Rod on which point?"
      before="Rod on"
      points={[...heightPoints(view, hole), turning]}
      onPick={setOn}
      onClose={onClose}
    >
      <p>
        From set-up {setup}. A turning point is any firm spot that both set-ups see: read it, move the level,
        read it again.
      </p>
      <CheckField
        label="Rod upside down, against a point above the level"
        value={inverted}
        onChange={setInverted}
      />
      <CheckField label="Enter how far off the rod is, too" value={asksSight} onChange={setAsksSight} />
    </PointSheet>
  );
}
