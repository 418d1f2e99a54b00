import type { Units } from '../../units/index.ts';
import type { Drawn } from './drawn.ts';
import type { Layout } from './layout.ts';
import {
  Baseline,
  ErrorEllipse,
  FaceMark,
  Footer,
  FrontMark,
  GroundLine,
  HoleMark,
  NailDot,
  Outline,
  Pull,
  ReferenceStake,
} from './pieces.tsx';

export interface DrawingPartsProps {
  readonly drawn: Drawn;
  readonly layout: Layout;
  /** So many times as large as usual are the letters. */
  readonly text: number;
  readonly units: Units;
}

/** All that is drawn of a layout, on the screen and on paper: what lies over other things comes after it. */
export function DrawingParts({ drawn: { stakes, pulls }, layout, text, units }: DrawingPartsProps) {
  const { view, exaggeration: times } = layout;
  return (
    <>
      {layout.ground.map((line) => (
        <GroundLine key={line.name} line={line} />
      ))}
      {stakes && layout.stakes && <Baseline {...layout.stakes} text={text} />}
      {layout.references.map(({ name, at }) => (
        <ReferenceStake key={name} label={name} at={at} text={text} />
      ))}
      {pulls?.map((pull) => (
        <Pull key={pull.words} pull={pull} view={view} />
      ))}
      {layout.holes.map((placed) => (
        <g key={placed.hole.label}>
          <Outline placed={placed} view={view} />
          <ErrorEllipse placed={placed} view={view} times={times} />
        </g>
      ))}
      {layout.holes.map((placed) => (
        <HoleMark key={placed.hole.label} placed={placed} />
      ))}
      {layout.nails.map((nail) => (
        <NailDot key={`${nail.name} ${nail.at.x} ${nail.at.y}`} nail={nail} />
      ))}
      {layout.faces.map((face) => (
        <FaceMark key={`${face.hole} ${face.name}`} face={face} />
      ))}
      {layout.front && <FrontMark front={layout.front} />}
      <Footer layout={layout} units={units} />
    </>
  );
}
