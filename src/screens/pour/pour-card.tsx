import type { Body, Decision } from '../../job/entry-schema.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';
import { GateList } from '../../ui/index.ts';
import { BagsNeeded } from './bags-needed.tsx';
import { dated } from './dated.ts';
import { missingItems } from './gate-mend.ts';
import { MissingList } from './missing-list.tsx';
import { PouredCard } from './poured-card.tsx';

export interface PourCardProps {
  readonly view: JobView;
  readonly hole: HoleAssessment;
  /** What time it is, milliseconds since 1970. */
  readonly now: number;
  readonly onLog: (body: Body) => void;
  readonly onDecide: (on: Decision) => void;
}

/** One hole before its concrete: what is missing, what is done. Or after it: what was poured, and what was found since. */
export function PourCard({ view, hole, now, onLog, onDecide }: PourCardProps) {
  if (hole.poured) return <PouredCard {...{ view, hole, now, onDecide }} />;
  const missing = missingItems(hole.pourGate);
  const green = hole.pourGate.items.filter((item) => item.green).map((item) => dated(view, hole.hole, item));
  return (
    <>
      <h2>
        {hole.pourGate.open
          ? `Hole ${hole.hole} is ready for concrete`
          : `Hole ${hole.hole}: ${missing.length} missing before concrete`}
      </h2>
      <MissingList
        key={hole.hole}
        hole={hole.hole}
        gate={hole.pourGate.items}
        items={missing}
        {...{ onLog, onDecide }}
      />
      <BagsNeeded view={view} hole={hole} />
      <GateList label={`Done for hole ${hole.hole}`} items={green} />
    </>
  );
}
