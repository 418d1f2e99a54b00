import { Button, ButtonRow, Sheet } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';

export interface WaySheetProps {
  readonly face: string;
  /** Length of the level, in words. */
  readonly over: string;
  /** Which way its marked end has to look; null where that is of no account. */
  readonly end: 'up' | 'down' | null;
  /** What the level is known to be wrong by, in words. */
  readonly error: string | null;
  readonly onPlumb: () => void;
  readonly onLeans: (way: 'out' | 'in') => void;
  readonly onOtherLevel: () => void;
  /** Reads the face both ways round; absent while that is being done. */
  readonly onTurn?: () => void;
  readonly onClose: () => void;
}

const HEAD = { up: 'marked end up', down: 'marked end down' } as const;

/** Which way the top of the post leans, by a level held on one face. */
export function WaySheet({ face, over, end, error, onPlumb, onLeans, ...rest }: WaySheetProps) {
  const { onTurn, onOtherLevel, onClose } = rest;
  return (
    <Sheet title={`Plumb, ${face}`} onClose={onClose}>
      {!onTurn && (
        <p>
          {end === 'up'
            ? 'Mark one end of the level. First that end up.'
            : 'Now turn the level end for end: the marked end down, on the same face.'}
        </p>
      )}
      <p>
        Hold the level upright against {face}, over {over}
        {end ? `, ${HEAD[end]}` : ''}. Which way does the top of the post lean?
      </p>
      <Button kind="main" onPress={onPlumb}>
        Plumb: bubble in the middle
      </Button>
      <Button onPress={() => onLeans('out')}>Top leans out, towards me</Button>
      <Button onPress={() => onLeans('in')}>Top leans in, away from me</Button>
      {error && <p>{unbroken(error)}</p>}
      {onTurn && <Button onPress={onTurn}>Read both ways, the level turned</Button>}
      {onTurn && <Button onPress={onOtherLevel}>Another level, of another length</Button>}
    </Sheet>
  );
}

interface DoubtSheetProps {
  readonly face: string;
  readonly doubt: string;
  readonly onKeep: () => void;
  readonly onAgain: () => void;
}

/** A bubble in the middle that is hard to believe. */
export function DoubtSheet({ face, doubt, onKeep, onAgain }: DoubtSheetProps) {
  return (
    <Sheet
      title={`Plumb, ${face}`}
      onClose={onAgain}
      actions={
        <ButtonRow>
          <Button onPress={onKeep}>Keep it as read</Button>
          <Button kind="main" onPress={onAgain}>
            Read it again
          </Button>
        </ButtonRow>
      }
    >
      <p class="keypad-question" role="alert">
        {unbroken(doubt)}
      </p>
    </Sheet>
  );
}
