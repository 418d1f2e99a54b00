import type { Plan } from '../../job/plan-schema.ts';
import { angleWords } from '../../judge/frame-words.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { leanWords } from '../../judge/words.ts';
import type { JudgementRow } from '../../ui/index.ts';
import { formatSmall } from '../../units/index.ts';
import { isBeforePour } from '../looks.ts';

/** All that is judged of a set post, one row each. A neighbour that does not stand yet has no row. */
export function setRows(hole: HoleAssessment, plan: Plan): JudgementRow[] {
  const { set } = hole;
  const { position, plumb, level, tops = level } = plan.tolerances;
  const spacing = set.spacing.filter(({ verdict }) => verdict !== 'unmeasured');
  const rows: JudgementRow[] = [
    { ...set.position, name: 'place', tolerance: `within ${formatSmall(position.m, plan.units)}` },
    { ...set.plumb, name: 'plumb', tolerance: leanWords(plumb, plan.units) },
    { ...set.level, name: 'top', tolerance: `± ${formatSmall(level.m, plan.units)}` },
    ...(set.tops.verdict === 'unmeasured'
      ? []
      : [{ ...set.tops, name: 'level with the others', tolerance: `± ${formatSmall(tops.m, plan.units)}` }]),
    ...(set.twist && set.twist.verdict !== 'unmeasured'
      ? [{ ...set.twist, name: 'turned', tolerance: `± ${angleWords(set.twist.tolerance)}` }]
      : []),
    ...spacing.map((judgement) => ({
      ...judgement,
      name: `spacing to ${judgement.to}`,
      tolerance: `± ${formatSmall(plan.tolerances.spacing.m, plan.units)}`,
    })),
  ];
  // What was in before the pour is marked so until the post is read again.
  return isBeforePour(hole)
    ? rows.map((row) => (row.verdict === 'in' ? { ...row, beforePour: true } : row))
    : rows;
}
