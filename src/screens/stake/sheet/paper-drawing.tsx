import { DrawingParts } from '../../../ui/drawing/drawing-parts.tsx';
import { layOut } from '../../../ui/drawing/layout.ts';
import { footerOf } from '../../../ui/drawing/pieces.tsx';
import { describeDrawing } from '../../../ui/drawing/words.ts';
import type { Units } from '../../../units/index.ts';
import type { SheetDrawing } from './sheet-parts.ts';

export interface PaperDrawingProps {
  readonly drawing: SheetDrawing;
  readonly units: Units;
}

/** On paper letters are as large as they are. */
const USUAL_TEXT = 1;

/** The drawing of a sheet: of one size whatever the screen, so that it can stand in a file as well. */
export function PaperDrawing({ drawing: { title, drawn, width, maxHeight }, units }: PaperDrawingProps) {
  const layout = layOut(drawn, width, maxHeight);
  const height = layout.view.height + footerOf(layout, units).height;
  return (
    <svg
      role="img"
      aria-label={describeDrawing(title, drawn, 1)}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
    >
      <DrawingParts drawn={drawn} layout={layout} text={USUAL_TEXT} units={units} />
    </svg>
  );
}
