import { topsOf } from '../../judge/tops.ts';
import type { JobView } from '../../judge/view.ts';
import { Button, Sheet } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { closingWords, heightLines, levelTestWords } from './height-lines.ts';
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

/** What can be read of heights, then what is known of them and what guards each. */
export function HeightsSheet(props: HeightsSheetProps) {
  const { view, setup } = props;
  return (
    <Sheet title="Heights" onClose={props.onClose}>
      <p>{setupWords(view, setup)}</p>
      <Button kind="main" onPress={props.onRod}>
        Read the rod
      </Button>
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
  if (lines.length === 0) return <p>No height is known yet.</p>;
  return (
    <>
      <h3>Heights so far</h3>
      <ul class="points">
        {lines.map(({ key, name, height, guard }) => (
          <li key={key}>
            <strong>{name}</strong>: {unbroken(height)}; {unbroken(guard)}.
          </li>
        ))}
      </ul>
      <h3>How they hold together</h3>
      {closingWords(view).map((words) => (
        <p key={words}>{unbroken(words)}</p>
      ))}
      <p>{unbroken(levelTestWords(view))}</p>
      <p>{unbroken(topsOf(view).text)}</p>
    </>
  );
}
