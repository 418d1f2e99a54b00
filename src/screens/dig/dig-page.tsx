import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import { caveInWords } from '../../judge/cautions.ts';
import type { HoleAssessment } from '../../judge/types.ts';
import { viewOf } from '../../judge/view.ts';
import { Caution, type HoleLook, HoleStrip, PlanDrawing } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import type { Units } from '../../units/index.ts';
import { BuyButton } from '../build/buy-button.tsx';
import { drawnSite, stateOf } from '../drawn-site.ts';
import { handDigWords } from '../hand-dig.ts';
import { HeightsButton } from '../heights/heights-button.tsx';
import { useJobBook } from '../job-book.ts';
import { JobFrame } from '../job-frame.tsx';
import { setLook } from '../looks.ts';
import { hrefOf } from '../route.ts';
import { SessionCheck } from '../session-check.tsx';
import { StringsButton, WayBackButton } from '../stake/strings/strings-button.tsx';
import { waitsForDecision } from '../undecided.ts';
import { digTask } from './dig-step.ts';
import { LastDug } from './open-hole.tsx';
import '../cards.css';

/** A hole as the Dig phase shows it: once dug, by its depth and width; what waits for a decision shows that. */
export function digLook(hole: HoleAssessment): HoleLook {
  const state = stateOf(hole);
  const undecided: HoleLook = { state, verdict: 'unsure', undecided: true };
  // Once its post stands, a hole has one mark and one word in every phase; but a good post decides nothing about its hole.
  if (hole.set.done) return waitsForDecision(hole) && hole.set.verdict !== 'out' ? undecided : setLook(hole);
  const task = digTask(hole);
  if (state !== 'dug') return { state };
  const { depth, width, room } = hole.dug;
  const short = [depth, width, room].some(({ verdict }) => verdict === 'out');
  if (short) return { state, verdict: 'out' };
  if (task === 'decide') return undecided;
  if (task === 'unknown') return { state };
  if (task !== 'done' && task !== 'middle') return { state, verdict: 'unsure' };
  // Its middle, while nobody has measured it or nothing guards it, is not known to be right.
  return {
    state,
    verdict: 'in',
    checked: depth.checked && width.checked && room.verdict === 'in' && room.checked,
  };
}

export interface DigPageProps {
  readonly actions?: ComponentChildren;
  /** The hole that the card is about. */
  readonly hole?: string;
  readonly children: ComponentChildren;
}

/** The frame of every card of the Dig phase: the card, where it is, the cautions, the holes. */
export function DigPage({ actions, hole, children }: DigPageProps) {
  const { jobId, situation, assessment } = useJobBook();
  const { plan } = situation;
  const undug = assessment.holes.some((each) => each.hole === hole && each.dug.at === null);
  const deep = useMemo(() => {
    const view = viewOf(situation);
    return view && hole !== undefined ? caveInWords(view, hole) : '';
  }, [situation, hole]);
  if (!plan) return null;
  const href = (label: string) => hrefOf({ at: 'job', job: jobId, phase: 'dig', hole: label });
  return (
    <JobFrame phase="dig" actions={actions}>
      <SessionCheck />
      {children}
      <PlanDrawing
        title={hole === undefined ? plan.name : `${plan.name}, hole ${hole}`}
        units={plan.units}
        {...drawnSite(situation, assessment.holes, { live: hole ?? null, lookOf: digLook })}
      />
      <LastDug but={hole ?? null} />
      <DigCautions units={plan.units} deep={deep} />
      {undug && <StringsButton hole={hole ?? null} />}
      <WayBackButton hole={hole ?? null} />
      <HeightsButton hole={hole ?? null} />
      <BuyButton />
      <HoleStrip
        label="Holes"
        holes={assessment.holes.map((each) => ({
          label: each.hole,
          href: href(each.hole),
          current: each.hole === hole,
          ...digLook(each),
        }))}
      />
    </JobFrame>
  );
}

interface DigCautionsProps {
  readonly units: Units;
  /** Said of a hole whose sides can bury a person; empty of others. */
  readonly deep: string;
}

function DigCautions({ units, deep }: DigCautionsProps) {
  return (
    <Caution title="open holes">
      <ul class="points">
        <li>Cover or fence every open hole whenever you turn your back on it.</li>
        {deep !== '' && <li>{unbroken(deep)}</li>}
        <li>Nobody climbs in, or reaches in with the head: the walls come without warning.</li>
        <li>{unbroken(handDigWords(units))}</li>
        <li>Look up before you raise a bar, an auger or a rod: keep well clear of overhead lines.</li>
      </ul>
    </Caution>
  );
}
