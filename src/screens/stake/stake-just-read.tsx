import type { Entry } from '../../job/entry-schema.ts';
import { isKind } from '../../job/log.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { VerdictMark } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';

/** What the tape that was just read says of its stake, while the card is about the next thing already. */
export function StakeJustRead({ hole }: { readonly hole: string | null }) {
  const { save, assessment } = useJobBook();
  const read = save.at === 'saved' && save.last ? justRead(save.last, assessment.holes) : null;
  if (!read || read.hole === hole) return null;
  const { verdict, checked, text } = read.staked.position;
  return (
    <p>
      <VerdictMark verdict={verdict} checked={checked}>
        {`Stake ${read.hole}: ${text}`}
      </VerdictMark>
    </p>
  );
}

/** The hole whose stake a pull went to, once its tapes fix a place; null of a check pull, which is about two stakes. */
function justRead(entry: Entry, holes: readonly HoleAssessment[]): HoleAssessment | null {
  if (!isKind(entry, 'pull')) return null;
  const stakes = [entry.body.from.thing, entry.body.to.thing].flatMap((thing) =>
    thing.kind === 'hole-stake' ? [thing.hole] : [],
  );
  const read = stakes.length === 1 ? holes.find(({ hole }) => hole === stakes[0]) : undefined;
  return read && read.dug.at === null && read.staked.position.verdict !== 'unmeasured' ? read : null;
}
