import type { Body } from '../../job/entry-schema.ts';
import { Button, ButtonLink, VerdictMark } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { hrefOf } from '../route.ts';
import type { MissingItem } from './gate-mend.ts';
import './pour.css';
import { unbroken } from '../../ui/unbroken.ts';

export interface MissingListProps {
  readonly hole: string;
  readonly items: readonly MissingItem[];
  readonly onLog: (body: Body) => void;
  /** What was met in the ground is to be decided; not given where no such item is listed. */
  readonly onDecide?: () => void;
}

/** What is missing at the gate, each with the one tap that mends it or leads to where it is mended. */
export function MissingList({ hole, items, onLog, onDecide }: MissingListProps) {
  return (
    <ul class="missing-list" aria-label={`Missing before concrete goes into hole ${hole}`}>
      {items.map((each) => (
        <li key={each.item}>
          <MissingRow missing={each} {...{ hole, onLog, onDecide }} />
        </li>
      ))}
    </ul>
  );
}

interface MissingRowProps extends Pick<MissingListProps, 'hole' | 'onLog'> {
  readonly missing: MissingItem;
  readonly onDecide: (() => void) | undefined;
}

function MissingRow({ hole, missing: { text, mend }, onLog, onDecide }: MissingRowProps) {
  const { jobId } = useJobBook();
  switch (mend.by) {
    case 'tick':
      return (
        <Button onPress={() => onLog({ kind: 'check', hole, item: mend.item, done: true })}>
          <span class="tick">
            <span class="tick-words">
              <span class="tick-box" aria-hidden="true" />
              {mend.words}
            </span>{' '}
            <span class="tick-hint">{unbroken(text)}</span>
          </span>
        </Button>
      );
    case 'decision':
      return (
        <>
          <MissingText text={text} />
          {onDecide && <Button onPress={onDecide}>Enter the decision</Button>}
        </>
      );
    case 'phase': {
      const { phase } = mend;
      const name = `${phase.slice(0, 1).toUpperCase()}${phase.slice(1)}`;
      return (
        <div class="missing-line">
          <MissingText text={text} />
          <ButtonLink href={hrefOf({ at: 'job', job: jobId, phase, hole })} label={`Go to ${name}: ${text}`}>
            {name}
          </ButtonLink>
        </div>
      );
    }
  }
}

const MissingText = ({ text }: { readonly text: string }) => <VerdictMark verdict="out">{text}</VerdictMark>;
