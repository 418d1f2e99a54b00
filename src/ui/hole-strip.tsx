import { type HoleLook, HoleShape, lookWord } from './mark-shapes.tsx';

export interface StripHole extends HoleLook {
  readonly label: string;
  /** A word or two under its own: `ready`, `6 missing`. */
  readonly note?: string;
  /** Where a tap leads; without one `onHole` is called. */
  readonly href?: string;
  /** The hole that the screen is about. */
  readonly current?: boolean;
}

export interface HoleStripProps {
  /** Accessible name: `Holes`. */
  readonly label: string;
  readonly holes: readonly StripHole[];
  readonly onHole?: (label: string) => void;
}

/** All holes at a glance: each with its label, its mark and its word. */
export function HoleStrip({ label, holes, onHole }: HoleStripProps) {
  return (
    <nav class="hole-strip" aria-label={label}>
      <ul>
        {holes.map((hole) => (
          <li key={hole.label}>
            <StripCell hole={hole} onHole={onHole} />
          </li>
        ))}
      </ul>
    </nav>
  );
}

function StripCell({
  hole,
  onHole,
}: {
  readonly hole: StripHole;
  readonly onHole: ((label: string) => void) | undefined;
}) {
  const current = hole.current ? 'true' : undefined;
  const inside = (
    <>
      <span class="hole-strip-label">
        <span class="visually-hidden">Hole </span>
        {hole.label}
      </span>
      <svg class="hole-strip-shape" viewBox="-14 -14 28 28" aria-hidden="true" focusable="false">
        <HoleShape x={0} y={0} r={12} {...hole} />
      </svg>
      <span class="hole-strip-word">{lookWord(hole) ?? hole.state}</span>
      {hole.note && <span class="hole-strip-word">{hole.note}</span>}
    </>
  );
  if (hole.href !== undefined)
    return (
      <a class="hole-strip-cell" href={hole.href} aria-current={current}>
        {inside}
      </a>
    );
  return (
    <button type="button" class="hole-strip-cell" aria-current={current} onClick={() => onHole?.(hole.label)}>
      {inside}
    </button>
  );
}
