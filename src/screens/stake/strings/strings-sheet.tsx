import { recordedTies, TIES_WANTED } from '../../../judge/recorded-ties.ts';
import type { JobView } from '../../../judge/view.ts';
import { Button, PlanDrawing, Sheet } from '../../../ui/index.ts';
import { drawnSite } from '../../drawn-site.ts';
import { useJobBook } from '../../job-book.ts';
import { More } from '../../more.tsx';
import { drawnString } from './drawn-strings.ts';
import { stringName, stringsWords } from './string-words.ts';
import { type JobStrings, nailTask, nailThing, presentIn } from './strings-of.ts';
import type { OpenStrings } from './strings-props.ts';

export interface StringsSheetProps {
  readonly view: JobView;
  readonly strings: JobStrings;
  /** The hole at hand: its ties come first. */
  readonly hole: string | null;
  readonly onOpen: (open: OpenStrings) => void;
  readonly onClose: () => void;
}

/** All strings of the job, what is up of them, and how many ties each hole has. */
export function StringsSheet({ view, strings, hole, onOpen, onClose }: StringsSheetProps) {
  const { situation, assessment } = useJobBook();
  const { plan } = strings;
  const present = presentIn(situation);
  const undug = strings.asked.holes.map(({ label }) => label).filter((label) => !view.dugHoles.has(label));
  const ties = (label: string) => (
    <Button key={label} onPress={() => onOpen({ at: 'ties', hole: label })}>
      {tiesLabel(view, label)}
    </Button>
  );
  return (
    <Sheet
      title="Strings and ties"
      onClose={onClose}
      actions={
        <Button kind="main" onPress={() => onOpen({ at: 'back', hole })}>
          Find a centre again
        </Button>
      }
    >
      {stringsWords(plan, view.plan.units).map((words) => (
        <p key={words}>{words}</p>
      ))}
      <PlanDrawing
        title={`${view.plan.name}, strings`}
        units={view.plan.units}
        {...drawnSite(situation, assessment.holes, {
          live: hole,
          pulls: plan.strings.map((string) => drawnString(string, 'string')),
        })}
      />
      {plan.strings.map((string) => {
        const driven = string.nails.filter(
          (nail) => nailTask(situation, present, nailThing(nail), nail) !== 'drive',
        ).length;
        return (
          <Button key={string.label} onPress={() => onOpen({ at: 'string', label: string.label })}>
            {stringName(string)}
            {driven > 0 && `: ${driven} of 2 nails driven`}
          </Button>
        );
      })}
      <h3>Ties, to find a centre again after digging</h3>
      {hole !== null && undug.includes(hole) && ties(hole)}
      {undug.length > 0 && (
        <More label={hole === null ? 'Ties of each hole' : 'Ties of the other holes'}>
          {undug.filter((label) => label !== hole).map(ties)}
        </More>
      )}
    </Sheet>
  );
}

function tiesLabel(view: JobView, hole: string): string {
  const read = recordedTies(view, hole).length;
  return `Hole ${hole}: ${read === 0 ? 'no tie' : read === 1 ? '1 tie' : `${read} ties`} read${read < TIES_WANTED ? ` of ${TIES_WANTED}` : ''}`;
}
