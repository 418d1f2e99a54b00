import { formatLength, type Units } from '../../units/index.ts';
import type { Profiled, ProfiledHole } from './profiled.ts';

/** All that the picture shows, hole by hole. */
export function describeProfile(title: string, { lines, frost }: Profiled, units: Units): string {
  const deep =
    frost === null ? 'frost depth not known' : `frost line ${formatLength(frost, units)} below the ground`;
  const holes = lines.flat().map((hole) => holeWords(hole, units));
  return [`${title}, seen from the side; ${deep}.`, ...holes].join(' ');
}

function holeWords(hole: ProfiledHole, units: Units): string {
  const { label, kind, ground, groundMeasured, bottom, dug, gravel, top, topMeasured, cut } = hole;
  const parts = [
    `top ${above(top, units)}${topMeasured ? '' : ' as planned'}`,
    ...(cut === null ? [] : [`cut ${above(cut, units)}`]),
    `ground ${above(ground, units)}${groundMeasured ? '' : ', not measured'}`,
    bottom === null
      ? 'depth not known'
      : `hole ${formatLength(ground - bottom, units)} deep${dug ? '' : ' as planned'}`,
    ...(gravel > 0 ? [`gravel ${formatLength(gravel, units)}`] : []),
  ];
  return `${kind === 'pier' ? 'Pier' : 'Post'} ${label}: ${parts.join(', ')}.`;
}

/** Against the benchmark: `2′ 6″ above`, `4″ below`, `level with the benchmark`. */
function above(height: number, units: Units): string {
  const size = formatLength(Math.abs(height), units);
  if (size === formatLength(0, units)) return 'level with the benchmark';
  return `${size} ${height > 0 ? 'above' : 'below'} the benchmark`;
}
