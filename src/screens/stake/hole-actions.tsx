import type { Body } from '../../job/entry-schema.ts';
import { lengthWords } from '../../job/length.ts';
import { thingName } from '../../job/words.ts';
import { Button, ButtonLink, ButtonRow } from '../../ui/index.ts';
import { useJobBook } from '../job-book.ts';
import { useOpenPull } from '../open-pull.ts';
import type { PullToRead } from '../pull-flow.tsx';
import { hrefOf } from '../route.ts';
import type { Misread } from './misread.ts';
import { putOffNote } from './put-off.ts';
import { type HoleTask, holeAfter } from './stake-step.ts';
import { StrikeButton } from './strike-button.tsx';
import type { UnsurePull } from './unsure-pull.ts';
import type { Stake } from './use-stake.ts';

export interface HoleActionsProps {
  readonly stake: Stake;
  readonly hole: string;
  readonly task: HoleTask;
  readonly fromA: PullToRead;
  readonly fromB: PullToRead;
  /** A reading that looks wrong: before a stake is shifted. */
  readonly misread: Misread | null;
  readonly unsure: UnsurePull;
  readonly log: (body: Body) => Promise<boolean>;
}

/** The one thing to do at this hole, and the way on to another. */
export function HoleActions(props: HoleActionsProps) {
  const { stake, hole, task, misread, log } = props;
  const { jobId } = useJobBook();
  const after = holeAfter(stake.state, hole);
  const href = (label: string | null) => hrefOf({ at: 'job', job: jobId, phase: 'stake', hole: label });
  const moved = () => void log({ kind: 'stand', thing: { kind: 'hole-stake', hole }, event: 'moved' });
  if (task === 'done')
    return (
      <ButtonLink kind="main" href={href(after)}>
        {after === null ? 'Go on' : `Go on to hole ${after}`}
      </ButtonLink>
    );
  const beside = [
    ...(task === 'unsure' ? [<UnsureLater key="later" href={href(after)} {...props} />] : []),
    ...(task !== 'unsure' && after !== null
      ? [
          <ButtonLink key="later" href={href(after)} label={`Later: go on to hole ${after}`}>
            Later
          </ButtonLink>,
        ]
      : []),
    ...(task === 'shift' && misread
      ? [
          <Button key="moved" onPress={moved}>
            Stake moved
          </Button>,
        ]
      : []),
  ];
  return (
    <>
      {beside.length > 0 && <ButtonRow>{beside}</ButtonRow>}
      <MainAction {...props} onMoved={moved} />
    </>
  );
}

/**
 * An unsure stake is put off, too: with nothing else to drive, the way leads on to the check pulls. The log keeps that it was,
 * so that it is not asked for again before one of its tapes is read.
 */
function UnsureLater({
  hole,
  log,
  href,
}: Pick<HoleActionsProps, 'hole' | 'log'> & { readonly href: string }) {
  const later = async () => {
    if (await log(putOffNote(hole))) location.hash = href;
  };
  return <Button onPress={() => void later()}>Later</Button>;
}

function MainAction(props: HoleActionsProps & { readonly onMoved: () => void }) {
  const { hole, task, fromA, fromB, misread, unsure, log, onMoved } = props;
  const openPull = useOpenPull();
  const read = (pull: PullToRead, words: string) => (
    <Button key={words} kind="main" onPress={() => openPull(pull)}>
      {words}
    </Button>
  );
  const stand = { kind: 'stand', thing: { kind: 'hole-stake', hole }, event: 'driven' } as const;
  switch (task) {
    case 'drive':
      return (
        <Button key="drive" kind="main" onPress={() => void log(stand)}>
          Stake driven
        </Button>
      );
    case 'from-a':
      return read(fromA, 'Read the tape from A');
    case 'from-b':
      return read(fromB, 'Read the tape from B');
    case 'done':
      return null;
  }
  if (misread?.cure === 'strike')
    return <StrikeButton entry={misread.entry} words={`Strike ${lengthWords(misread.entry.body.reading)}`} />;
  if (misread) return read(misread.pull, `Read the tape from ${thingName(misread.pull.from.thing)} again`);
  if (task === 'unsure') return read(unsure.pull, unsure.words);
  return (
    <Button key="shift" kind="main" onPress={onMoved}>
      Stake moved
    </Button>
  );
}
