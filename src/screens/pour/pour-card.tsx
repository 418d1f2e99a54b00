import type { Body } from '../../job/entry-schema.ts';
import { thingName } from '../../job/words.ts';
import type { GateItem, HoleAssessment } from '../../judge/types.ts';
import type { JobView } from '../../judge/view.ts';
import { weatherTick } from '../../judge/weather.ts';
import { capital } from '../../judge/words.ts';
import { GateList, VerdictMark } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { whenWords } from '../record/when.ts';
import { BagsNeeded } from './bags-needed.tsx';
import { missingItems } from './gate-mend.ts';
import { MissingList } from './missing-list.tsx';

export interface PourCardProps {
  readonly view: JobView;
  readonly hole: HoleAssessment;
  readonly onLog: (body: Body) => void;
  readonly onDecide: () => void;
}

/** One hole before its concrete: what is missing, what is done. Or after it: what was poured, and what was found since. */
export function PourCard({ view, hole, onLog, onDecide }: PourCardProps) {
  if (hole.poured) return <PouredCard view={view} hole={hole} />;
  const missing = missingItems(hole.pourGate);
  const green = hole.pourGate.items.filter((item) => item.green).map((item) => dated(view, hole.hole, item));
  return (
    <>
      <h2>
        {hole.pourGate.open
          ? `Hole ${hole.hole} is ready for concrete`
          : `Hole ${hole.hole}: ${missing.length} missing before concrete`}
      </h2>
      <MissingList key={hole.hole} hole={hole.hole} items={missing} onLog={onLog} onDecide={onDecide} />
      <BagsNeeded view={view} hole={hole} />
      <GateList label={`Done for hole ${hole.hole}`} items={green} />
    </>
  );
}

function PouredCard({ view, hole }: Pick<PourCardProps, 'view' | 'hole'>) {
  const post = thingName({ kind: 'post', hole: hole.hole }, view.plan);
  const pour = view.book.pours(hole.hole).at(-1)?.entry;
  if (!pour) return null;
  const { bags, note } = pour.body;
  const { verdict, headline } = hole.set;
  return (
    <>
      <h2>Hole {hole.hole} is poured</h2>
      <p>
        {bags} {bags === 1 ? 'bag' : 'bags'},{' '}
        {new Date(pour.at).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' })}
        {note ? `. ${capital(note)}` : ''}.
      </p>
      {verdict === 'out' ? (
        <>
          <p>
            <VerdictMark verdict="out">{capital(post)} is in concrete and measures out.</VerdictMark>
          </p>
          <p>
            {unbroken(headline)} While the concrete is wet it can still be pushed; after that whoever is
            responsible decides.
          </p>
        </>
      ) : (
        <p>
          Measure {post} again while it can still be pushed, and again the next day: the readings are logged
          like any other.
        </p>
      )}
      <GateList
        label={`The gate of hole ${hole.hole} as it is now`}
        items={hole.pourGate.items.map((item) => dated(view, hole.hole, item))}
      />
    </>
  );
}

/** The look at the sky with its day: the gate has no clock, and cannot say whether that was today. */
function dated(view: JobView, hole: string, item: GateItem): GateItem {
  const { tick } = weatherTick(view, hole);
  if (item.item !== 'weather' || !tick) return item;
  return { ...item, text: `${item.text} Looked at ${whenWords(tick.entry.at)}.` };
}
