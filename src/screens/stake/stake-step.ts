import type { Thing } from '../../job/entry-schema.ts';
import { ofKind, thingKey } from '../../job/log.ts';
import type { Situation } from '../../judge/situation.ts';
import type { Assessment, GateItem, HoleAssessment, MovedAssessment, NextPull } from '../../judge/types.ts';
import type { SitedReference } from '../../plan/hole.ts';
import type { CheckSet } from '../../stakeout/index.ts';
import type { PlannedPull } from '../../stakeout/types.ts';
import type { LoggedPull, Present } from './present.ts';

/**
 * What the next thing with one hole's stake is. Both tapes were read back, and: `shift`, it is out; `unsure`, they do not
 * tell, and no check pull has been made to it yet.
 */
export type HoleTask = 'drive' | 'from-a' | 'from-b' | 'shift' | 'unsure' | 'done';

/** What a further stake or nail wants next: to be driven, then to be tied to A and to B. */
export type FurtherTask = 'drive' | 'from-a' | 'from-b';

/** The one thing that the Stake screen is about. */
export type StakeStep =
  | { readonly at: 'plan' }
  | { readonly at: 'place' }
  | { readonly at: 'utilities' }
  | { readonly at: 'reference'; readonly stake: 'A' | 'B' }
  | { readonly at: 'baseline' }
  | { readonly at: 'moved'; readonly moved: MovedAssessment }
  | { readonly at: 'further'; readonly reference: SitedReference; readonly task: FurtherTask }
  | { readonly at: 'hole'; readonly hole: string; readonly task: HoleTask }
  | { readonly at: 'strike'; readonly entry: LoggedPull }
  | { readonly at: 'check'; readonly pull: PlannedPull }
  | { readonly at: 'settle'; readonly pull: NextPull | null }
  | { readonly at: 'ties'; readonly holes: readonly string[] }
  | { readonly at: 'done' };

export interface StakeState {
  readonly situation: Pick<Situation, 'plan' | 'holes' | 'site' | 'laid' | 'entries'>;
  readonly present: Present;
  readonly assessment: Pick<Assessment, 'holes' | 'next' | 'findings' | 'moved'>;
  /** Labels, in the order in which the stakes are best driven. */
  readonly order: readonly string[];
  /** Worked out when first asked for: most cards need none of it. */
  readonly checks: () => CheckSet;
  /** From every further stake that stands to the stake of every hole in reach. */
  readonly fromFurther: readonly PlannedPull[];
  /** The hole in the address. */
  readonly focused: string | null;
  /** The user wants to go on although not every stake is in and checked. */
  readonly goOn?: boolean;
  /** The user goes on although a stake seems to have moved. */
  readonly pastMoved?: boolean;
  /** Holes whose unsure stakes wait for later. */
  readonly putOff?: ReadonlySet<string>;
}

export const STAKE_A: Thing = { kind: 'stake', label: 'A' };
export const STAKE_B: Thing = { kind: 'stake', label: 'B' };

/**
 * The next thing to do in the Stake phase. What everything hangs on comes first, whatever hole is asked for: the plan, A
 * and B, utilities marked before anything is driven, A–B pulled, a stake that moved. Then the hole in the address, else a
 * further stake that is wanted, else the first hole that wants something; then check pulls until every stake is in and guarded; then ties.
 */
export function stakeStep(state: StakeState): StakeStep {
  const { assessment, order, focused } = state;
  const first = foundation(state);
  if (first) return first;
  const focus = assessment.holes.find(({ hole }) => hole === focused);
  if (focus) return { at: 'hole', hole: focus.hole, task: holeTask(focus, state) };
  const further = furtherStep(state);
  if (further) return further;
  const open = order
    .map((label) => ({ label, task: taskOf(state, label) }))
    .find(({ label, task }) => isOpen(state, label, task));
  if (open) return { at: 'hole', hole: open.label, task: open.task };
  return proof(state) ?? tiesOrDone(assessment.holes);
}

/** What must be so before any hole is staked; null when all of it is. */
function foundation({ situation, present, assessment, pastMoved = false }: StakeState): StakeStep | null {
  const { plan, holes, site, laid } = situation;
  if (!plan || holes.length === 0) return { at: 'plan' };
  if (!site || !laid) return { at: 'place' };
  if (!utilitiesMarked(assessment.holes)) return { at: 'utilities' };
  if (!present.stands(STAKE_A)) return { at: 'reference', stake: 'A' };
  if (!present.stands(STAKE_B)) return { at: 'reference', stake: 'B' };
  if (!present.pull(STAKE_A, STAKE_B)) return { at: 'baseline' };
  const { moved } = assessment;
  return moved && !pastMoved ? { at: 'moved', moved } : null;
}

/** Further stakes and nails are driven and tied to A and B before more holes are staked: then they can be pulled from. */
function furtherStep({ situation, present }: StakeState): StakeStep | null {
  const strung = stringEnds(situation.entries);
  for (const reference of situation.laid?.references ?? []) {
    const task = strung.has(thingKey(reference.thing)) ? null : furtherTask(present, reference.thing);
    if (task) return { at: 'further', reference, task };
  }
  return null;
}

/** What a string was read from or to: an offset stake then has done what it is for, and needs no tapes from A and B. */
const stringEnds = (entries: Situation['entries']): ReadonlySet<string> =>
  new Set(ofKind(entries, 'offset').flatMap(({ body }) => [thingKey(body.from), thingKey(body.to)]));

/** What a further stake or nail wants next; null when it stands and is tied to A and B. */
function furtherTask(present: Present, thing: Thing): FurtherTask | null {
  if (!present.stands(thing)) return 'drive';
  if (!present.pull(STAKE_A, thing)) return 'from-a';
  return present.pull(STAKE_B, thing) ? null : 'from-b';
}

/** By the same reading of the ticks as the gate of each hole. */
const utilitiesMarked = (holes: readonly HoleAssessment[]): boolean =>
  holes.every((hole) => isGreen(hole, 'utilities'));

const isGreen = ({ digGate }: HoleAssessment, item: GateItem['item']): boolean =>
  digGate.items.some((each) => each.item === item && each.green);

/**
 * A reading that looks wrong comes before any further check: it bends everything that is measured after it. Then the pulls that
 * guard every stake; then whatever helps most.
 */
function proof(state: StakeState): StakeStep | null {
  const { present, assessment, checks, goOn = false } = state;
  if (assessment.holes.every(isSettled) || goOn) return null;
  const entry = provedWrong(state);
  if (entry) return { at: 'strike', entry };
  const telling = assessment.findings.some(({ code }) => code === 'misreading') ? nextOf(assessment) : null;
  if (telling) return { at: 'settle', pull: telling };
  const unread = (pulls: readonly PlannedPull[]) =>
    pulls.find(({ from, to }) => !present.pull(from.thing, to.thing));
  const { guarding, further } = checks();
  const guard = unread(guarding);
  if (guard) return { at: 'check', pull: guard };
  const next = nextOf(assessment);
  const more = next ? null : unread(further);
  return more ? { at: 'check', pull: more } : { at: 'settle', pull: next };
}

/** A pull that alone looks misread and was made again since: the new one stands, the old one is to be struck. */
function provedWrong({ situation, assessment, present }: StakeState): LoggedPull | null {
  const lone = assessment.findings.flatMap(({ code, entries }) =>
    code === 'misreading' && entries.length === 1 ? entries : [],
  );
  const pulls = ofKind(situation.entries, 'pull').filter(({ id }) => lone.includes(id));
  const again = ({ id, body }: LoggedPull) => {
    const last = present.pull(body.from.thing, body.to.thing);
    return last !== null && last.id !== id;
  };
  return pulls.find(again) ?? null;
}

/** The pull that helps most, where it is one of this phase: between stakes. */
function nextOf({ next }: Pick<Assessment, 'next'>): NextPull | null {
  const atPost = next && [next.from, next.to].some(({ thing }) => thing.kind === 'post');
  return atPost ? null : next;
}

/** In its place, and no single misreading could have hidden it. A hole that is dug has outlived its stake. */
const isSettled = ({ staked, dug }: HoleAssessment): boolean =>
  dug.at !== null || (staked.position.verdict === 'in' && staked.position.checked);

function tiesOrDone(holes: readonly HoleAssessment[]): StakeStep {
  const open = holes.filter((hole) => hole.dug.at === null && !isGreen(hole, 'ties'));
  return open.length > 0 ? { at: 'ties', holes: open.map(({ hole }) => hole) } : { at: 'done' };
}

function taskOf(state: StakeState, label: string): HoleTask {
  const hole = state.assessment.holes.find((each) => each.hole === label);
  return hole ? holeTask(hole, state) : 'done';
}

/** What the stake of a hole wants next. */
function holeTask(assessed: HoleAssessment, { present }: StakeState): HoleTask {
  const { hole, staked, dug } = assessed;
  if (dug.at !== null) return 'done';
  const stake: Thing = { kind: 'hole-stake', hole };
  if (!present.stands(stake)) return 'drive';
  // Where A or B was driven anew, a stake that was proved from where they stood first need not be pulled to again.
  if (isSettled(assessed)) return 'done';
  if (!present.pull(STAKE_A, stake)) return 'from-a';
  if (!present.pull(STAKE_B, stake)) return 'from-b';
  if (staked.position.verdict === 'out') return 'shift';
  const proving = present.checked.flat().some((thing) => thingKey(thing) === thingKey(stake));
  return staked.position.verdict === 'unsure' && !proving ? 'unsure' : 'done';
}

/** Wants something now: an unsure stake that the user went past waits, until it is pulled to again. */
function isOpen({ putOff }: StakeState, label: string, task: HoleTask): boolean {
  return task !== 'done' && !(task === 'unsure' && putOff?.has(label));
}

/**
 * The hole after `label` that wants something, going round; null when no other does. For "Later", and for what comes after
 * a hole that is done.
 */
export function holeAfter(state: StakeState, label: string): string | null {
  const at = state.order.indexOf(label);
  const round = [...state.order.slice(at + 1), ...state.order.slice(0, Math.max(at, 0))];
  return round.find((other) => isOpen(state, other, taskOf(state, other))) ?? null;
}
