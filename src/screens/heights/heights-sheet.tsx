import { topsOf } from '../../judge/tops.ts';
import type { JobView } from '../../judge/view.ts';
import { Button, Sheet } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { closingWords, GUARD_MEANS, heightLines, levelTestWords } from './height-lines.ts';
import './heights.css';
import { sightLine } from './rod-belief.ts';

export interface HeightsSheetProps {
  readonly view: JobView;
  /** Where the level stands. */
  readonly setup: string;
  readonly onNewSetup: () => void;
  readonly onRod: () => void;
  readonly onDifference: () => void;
  readonly onTwoPeg: () => void;
  readonly onClose: () => void;
}

/** What can be read of heights, then how what was read holds together, then each height and what guards it. */
export function HeightsSheet(props: HeightsSheetProps) {
  const { view, setup } = props;
  return (
    <Sheet
      title="Heights"
      onClose={props.onClose}
      actions={
        <Button kind="main" onPress={props.onRod}>
          Read the rod
        </Button>
      }
    >
      <p>{setupWords(view, setup)}</p>
      <Button onPress={props.onNewSetup}>The level was moved</Button>
      <Button onPress={props.onDifference}>Water level or laser</Button>
      <Button onPress={props.onTwoPeg}>Test the level</Button>
      <Known view={view} />
    </Sheet>
  );
}

function setupWords(view: JobView, setup: string): string {
  return sightLine(view, setup) === null
    ? `The level is at set-up ${setup}, which hangs on no benchmark yet: read the rod on the benchmark, or on a turning point that has a height.`
    : `The level is at set-up ${setup}. If it was moved or knocked, say so.`;
}

function Known({ view }: { readonly view: JobView }) {
  const lines = heightLines(view);
  const together = [...closingWords(view), levelTestWords(view), topsOf(view).text];
  return (
    <>
      <h3>How the heights hold together</h3>
      {together.map((words) => (
        <p key={words}>{unbroken(words)}</p>
      ))}
      <h3>{lines.length === 0 ? 'No height is known yet' : 'Heights so far'}</h3>
      {lines.length > 0 && <p>{GUARD_MEANS}</p>}
      <ul class="height-lines">
        {lines.map(({ key, name, height, guard }) => (
          <li key={key}>
            <strong>{name}</strong>
            <br />
            {unbroken(height)}, {unbroken(guard)}
          </li>
        ))}
      </ul>
    </>
  );
}
