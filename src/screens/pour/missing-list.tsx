import { useRef } from 'preact/hooks';
import type { Body, Decision } from '../../job/entry-schema.ts';
import { gateReason } from '../../judge/gate-reasons.ts';
import type { GateItem } from '../../judge/types.ts';
import { capital } from '../../judge/words.ts';
import { Button, ButtonLink, VerdictMark } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { hrefOf } from '../route.ts';
import type { Mend, MissingItem } from './gate-mend.ts';
import './pour.css';
import { unbroken } from '../../ui/unbroken.ts';

export interface MissingListProps {
  readonly hole: string;
  readonly items: readonly MissingItem[];
  /** The whole gate: a line is done only once its item is green there. */
  readonly gate: readonly GateItem[];
  readonly onLog: (body: Body) => void;
  /** Something is to be decided; not given where no such item is listed. */
  readonly onDecide?: (on: Decision) => void;
}

/**
 * What is missing at the gate, each with the one tap that mends it or leads to where it is mended. A line that was ticked
 * stays where it is, as done, until the list is left: else the next one would slide under the thumb, and a second tap tick
 * it unread.
 */
export function MissingList({ hole, items, gate, onLog, onDecide }: MissingListProps) {
  const lines = useKeptLines(items, gate);
  if (lines.length === 0) return null;
  return (
    <ul class="missing-list" aria-label={`Missing before concrete goes into hole ${hole}`}>
      {lines.map(({ missing, done }) => (
        <li key={keyOf(missing)}>
          {done ? (
            <DoneRow missing={missing} />
          ) : (
            <MissingRow missing={missing} {...{ hole, onLog, onDecide }} />
          )}
        </li>
      ))}
    </ul>
  );
}

interface Line {
  readonly missing: MissingItem;
  readonly done: boolean;
}

const keyOf = ({ item, asked }: Pick<GateItem, 'item' | 'asked'>): string => `${item}:${asked ?? ''}`;

/**
 * Lines in the order in which they were first shown: those that are green as done, new ones at the end. What is asked no
 * more, or waits behind something else, is dropped: it is not done.
 */
function useKeptLines(items: readonly MissingItem[], gate: readonly GateItem[]): Line[] {
  const shown = useRef(new Map<string, MissingItem>());
  const now = new Map(items.map((each) => [keyOf(each), each]));
  const green = new Set(gate.filter((each) => each.green).map(keyOf));
  for (const key of shown.current.keys()) if (!now.has(key) && !green.has(key)) shown.current.delete(key);
  for (const [key, each] of now) shown.current.set(key, each);
  return [...shown.current].map(([key, each]) => ({ missing: each, done: !now.has(key) }));
}

/** As high as it was before it was done. */
function DoneRow({ missing: { item, text, mend } }: { readonly missing: MissingItem }) {
  return (
    <div class="button tick-done">
      <span class="tick">
        <span class="tick-words">
          <span class="tick-box tick-box-done" aria-hidden="true" />
          {mend.by === 'tick' ? mend.words : capital(gateReason(item).name)}
        </span>{' '}
        <span class="tick-hint tick-done-word">done</span>
        <span class="tick-hint" aria-hidden="true">
          {unbroken(text)}
        </span>
      </span>
    </div>
  );
}

function tickBody(hole: string, { item, asked }: Extract<Mend, { by: 'tick' }>): Body {
  return { kind: 'check', hole, item, done: true, ...(asked === undefined ? {} : { asked }) };
}

interface MissingRowProps extends Pick<MissingListProps, 'hole' | 'onLog'> {
  readonly missing: MissingItem;
  readonly onDecide: ((on: Decision) => void) | undefined;
}

function MissingRow({ hole, missing: { text, mend }, onLog, onDecide }: MissingRowProps) {
  const { jobId } = useJobBook();
  switch (mend.by) {
    case 'tick':
      return (
        <Button onPress={() => onLog(tickBody(hole, mend))}>
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
          {onDecide && <Button onPress={() => onDecide(mend.on)}>Enter the decision</Button>}
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
