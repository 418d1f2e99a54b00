import type { Cuts } from '../../build/cuts.ts';
import { requiredDepthOf } from '../../build/index.ts';
import { distance } from '../../geometry/point.ts';
import { groundAt } from '../../judge/supplies.ts';
import type { JobView } from '../../judge/view.ts';
import type { Hole } from '../../plan/hole.ts';
import type { Profiled, ProfiledHole } from '../../ui/profile/profiled.ts';

/** The job from the side: a ring unrolled from its first post, rows one after the other, the pier by itself. */
export function profileOf(view: JobView, cuts: Cuts | null): Profiled {
  return {
    lines: runs(view).map((run) => profiledRun(view, run, cuts)),
    frost: view.plan.rules.frostDepth?.m ?? null,
  };
}

function runs({ plan: { shape }, holes }: JobView): Hole[][] {
  switch (shape.kind) {
    case 'ring':
      return [holes.slice(0, shape.count), holes.slice(shape.count)].filter((run) => run.length > 0);
    case 'rows':
      return Array.from({ length: shape.rows }, (_, row) =>
        holes.slice(row * shape.columns, (row + 1) * shape.columns),
      );
    case 'points':
      return holes.length === 0 ? [] : [[...holes]];
  }
}

function profiledRun(view: JobView, run: readonly Hole[], cuts: Cuts | null): ProfiledHole[] {
  let at = 0;
  return run.map((hole, i) => {
    const before = run[i - 1];
    if (before) at += distance(before.place, hole.place);
    return profiled(view, hole, at, cuts);
  });
}

function profiled(view: JobView, hole: Hole, at: number, cuts: Cuts | null): ProfiledHole {
  const { label, section, holeDiameter } = hole;
  const ground = groundAt(view, label);
  const dug = view.book.dug(label).at(-1)?.entry.body;
  const depth = dug?.depth.m ?? requiredDepthOf(view.plan, label).depth;
  const read = view.heights.get(`bottom:${label}`)?.height;
  const top = view.heights.get(`top:${label}`)?.height;
  return {
    label,
    at,
    postWidth: section.kind === 'post' ? section.width : section.diameter,
    holeWidth: dug?.width.m ?? holeDiameter,
    ground: ground.height,
    groundMeasured: !ground.assumed,
    bottom: read ?? (depth === null ? null : ground.height - depth),
    dug: dug !== undefined,
    gravel: Math.max(0, view.plan.rules.gravel.m),
    top: top ?? hole.top,
    topMeasured: top !== undefined,
    cut: cuts?.cuts.find((cut) => cut.hole === label)?.height ?? null,
    kind: section.kind,
  };
}
