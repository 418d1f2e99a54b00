import { layOut } from '../../../ui/drawing/layout.ts';
import {
  Baseline,
  Footer,
  FrontMark,
  footerOf,
  GroundLine,
  HoleMark,
  NailDot,
  Outline,
  Pull,
  ReferenceStake,
} from '../../../ui/drawing/pieces.tsx';
import { describeDrawing } from '../../../ui/drawing/words.ts';
import type { Units } from '../../../units/index.ts';
import type { SheetDrawing } from './sheet-parts.ts';

export interface PaperDrawingProps {
  readonly drawing: SheetDrawing;
  readonly units: Units;
}

/** The drawing of a sheet: of one size whatever the screen, so that it can stand in a file as well. */
export function PaperDrawing({ drawing: { title, drawn, width, maxHeight }, units }: PaperDrawingProps) {
  const layout = layOut(drawn, width, maxHeight);
  const { view } = layout;
  const height = view.height + footerOf(layout, units).height;
  return (
    <svg
      role="img"
      aria-label={describeDrawing(title, drawn, 1)}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
    >
      {layout.ground.map((line) => (
        <GroundLine key={line.name} line={line} />
      ))}
      {layout.stakes && <Baseline {...layout.stakes} text={1} />}
      {layout.references.map(({ name, at }) => (
        <ReferenceStake key={name} label={name} at={at} text={1} />
      ))}
      {drawn.pulls?.map((pull) => (
        <Pull key={pull.words} pull={pull} view={view} />
      ))}
      {layout.holes.map((placed) => (
        <Outline key={placed.hole.label} placed={placed} view={view} />
      ))}
      {layout.holes.map((placed) => (
        <HoleMark key={placed.hole.label} placed={placed} />
      ))}
      {layout.nails.map((nail) => (
        <NailDot key={`${nail.name} ${nail.at.x} ${nail.at.y}`} nail={nail} />
      ))}
      {layout.front && <FrontMark front={layout.front} />}
      <Footer layout={layout} units={units} />
    </svg>
  );
}
