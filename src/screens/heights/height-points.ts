import type { HeightPoint } from '../../job/entry-schema.ts';
import { ofKind } from '../../job/log.ts';
import { pointOfKey } from '../../judge/height-words.ts';
import { type JobView, postOf, stands } from '../../judge/view.ts';
import { heightKey } from '../../measure/index.ts';

/**
 * Points whose height can be read now: the benchmark, what belongs to the hole at hand, stakes, turning points, and with
 * `elsewhere` all others that have a height. Each once.
 */
export function heightPoints(view: JobView, hole: string | null, elsewhere = false): HeightPoint[] {
  const points: HeightPoint[] = [
    { point: 'benchmark' },
    ...(hole === null ? [] : pointsAt(view, hole)),
    ...stakes(view).map((label): HeightPoint => ({ point: 'stake', label })),
    ...turningPoints(view).map((label): HeightPoint => ({ point: 'turning-point', label })),
    ...(elsewhere ? [...view.heights.keys()].map(pointOfKey) : []),
  ];
  return [...new Map(points.map((on) => [heightKey(on), on])).values()];
}

function pointsAt(view: JobView, hole: string): HeightPoint[] {
  return [
    ...(stands(view, postOf(hole)) ? [{ point: 'top', hole } as const] : []),
    { point: 'ground', hole },
    ...(view.dugHoles.has(hole) ? [{ point: 'bottom', hole } as const] : []),
  ];
}

const FIRST_STAKES = ['A', 'B'];

function stakes(view: JobView): string[] {
  const more = ofKind(view.entries, 'reference').flatMap(({ body }) =>
    body.thing.kind === 'stake' ? [body.thing.label] : [],
  );
  return [...new Set([...FIRST_STAKES, ...more])];
}

function turningPoints(view: JobView): string[] {
  const labels = [...view.levelled.values()].flatMap(({ body }) =>
    (body.kind === 'rod' ? [body.on] : [body.from, body.to]).flatMap((on) =>
      on.point === 'turning-point' ? [on.label] : [],
    ),
  );
  return [...new Set(labels)];
}

/** The next number that no turning point is called by. */
export function newTurningPoint(view: JobView): HeightPoint {
  const used = turningPoints(view).map(Number).filter(Number.isInteger);
  return { point: 'turning-point', label: String(Math.max(0, ...used) + 1) };
}
