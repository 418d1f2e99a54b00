import { toPlan } from '../../../geometry/rigid.ts';
import type { Thing } from '../../../job/entry-schema.ts';
import { thingName } from '../../../job/words.ts';
import { capital } from '../../../judge/words.ts';
import type { NailPlace } from '../../../stakeout/string-types.ts';
import { Button, Problem, PullRow } from '../../../ui/index.ts';
import { HELD } from '../../hold-choice.tsx';
import { useJobBook } from '../../job-book.ts';
import type { PullToRead } from '../../pull-flow.tsx';
import { heldTape, readWords } from '../../rise-words.ts';
import { useHold } from '../../use-hold.ts';
import type { Log } from '../../use-log.ts';
import { sideWords } from '../hole-words.ts';
import { typedPlace } from '../place-words.ts';
import { nailPull } from '../stake-pulls.ts';
import { STAKE_A, STAKE_B } from '../stake-step.ts';
import { type NailTask, presentIn } from './strings-of.ts';

export interface NailProps {
  readonly nail: NailPlace;
  readonly thing: Extract<Thing, { kind: 'stake' | 'nail' }>;
  readonly task: NailTask;
}

const pullsTo = ({ nail, thing }: Pick<NailProps, 'nail' | 'thing'>) =>
  [
    { name: 'A', pull: nailPull(STAKE_A, thing, nail.pulls.fromA) },
    { name: 'B', pull: nailPull(STAKE_B, thing, nail.pulls.fromB) },
  ] as const;

/** Both tapes of a nail, what each reads, and on which side of A–B it goes. */
export function NailTapes({ nail, thing, task }: NailProps) {
  const { situation } = useJobBook();
  const [how] = useHold();
  const { plan } = situation;
  if (!plan) return null;
  const present = presentIn(situation);
  return (
    <>
      {pullsTo({ nail, thing }).map(({ name, pull }) => {
        const done = task === 'drive' ? null : present.pull(pull.from.thing, thing);
        return (
          <PullRow
            key={name}
            live={task === 'drive' || task === `from-${name.toLowerCase()}`}
            from={`from ${name}’s nail`}
            to={`to ${nail.label}`}
            {...(task === 'drive' && how === 'slope'
              ? { held: HELD.level, m: pull.expected }
              : heldTape(situation, pull, how))}
            units={plan.units}
            {...(done ? { note: readWords(situation, done.body) } : {})}
          />
        );
      })}
      <p>{sideWords(nail.pulls)}</p>
    </>
  );
}

export interface NailActionProps extends NailProps {
  readonly log: Log;
  /** The main thing of its sheet, unless it says otherwise. */
  readonly kind?: 'main' | 'plain';
  readonly onPull: (pull: PullToRead) => void;
}

/** The next thing with a nail: to say that it is driven, then to read both tapes back. Nothing when that is done. */
export function NailAction({ nail, thing, task, log, kind = 'main', onPull }: NailActionProps) {
  const { situation } = useJobBook();
  const { plan, laid } = situation;
  if (!plan || !laid || task === 'done') return null;
  const name = thingName(thing);
  const driven = async () => {
    const at = typedPlace(toPlan(laid.motion, nail.site), plan.units);
    if (await log.log({ kind: 'reference', thing, at }))
      await log.log({ kind: 'stand', thing, event: 'driven' });
  };
  if (task === 'drive')
    return (
      <>
        {log.failed && <Problem text={`${capital(name)}: not saved; free some space, then tap again.`} />}
        <Button kind={kind} onPress={() => void driven()}>
          {capital(name)} driven
        </Button>
      </>
    );
  const wanted = pullsTo({ nail, thing }).find(({ name: from }) => task === `from-${from.toLowerCase()}`)!;
  return (
    <Button kind="main" onPress={() => onPull(wanted.pull)}>
      Read the tape from {wanted.name} to {nail.label}
    </Button>
  );
}
