import type { HeightPoint } from '../job/entry-schema.ts';

/** The point that a height's key stands for: `top:3`, `turning-point:1`, `benchmark`. */
export function pointOfKey(key: string): HeightPoint {
  const [point, ...rest] = key.split(':');
  const name = rest.join(':');
  switch (point) {
    case 'top':
    case 'ground':
    case 'bottom':
      return { point, hole: name };
    case 'turning-point':
    case 'stake':
      return { point, label: name };
    default:
      return { point: 'benchmark' };
  }
}
