import { thingName } from '../job/words.ts';
import { dugAt } from './dug.ts';
import { countedItem, green, isDecided, red, tickItem, undecided } from './gate.ts';
import { leastCover, type RoomJudgement } from './room.ts';
import { decisionText } from './room-words.ts';
import { lengthOf } from './supplies.ts';
import { after, countedTick } from './ticks.ts';
import type { GateItem } from './types.ts';
import { type JobView, middleOf, postOf, stands } from './view.ts';
import { capital, small } from './words.ts';

/**
 * Room for concrete all round: by the hole's own middle where that is measured and guarded, or by the gap measured at the
 * post as it stands. A gap that is measured too small is not ticked away, and a post off the middle of its footing is a
 * decision, however much concrete there is beside it.
 */
export function roomItem(view: JobView, hole: string, { room, middle }: RoomJudgement): GateItem {
  const post = postOf(hole);
  const name = thingName(post, view.plan);
  const changed = Math.max(dugAt(view, hole), view.book.standAt(middleOf(hole)));
  // The drift is from where the post stands: a post that was moved, or read again, is another question.
  const measured = Math.max(
    changed,
    view.book.standAt(post),
    ...[view.book.middles(hole), view.book.places(hole)].map((readings) => readings.at(-1)?.index ?? -1),
  );
  if (middle?.told === 'decision' && !isDecided(view, hole, 'room', measured))
    return undecided('room', decisionText(view, hole));
  if (room.verdict === 'in' && room.checked && middle)
    return green(
      'room',
      `Room all round ${name}: ${small(middle.cover, view.plan.units)} where it is tightest.`,
    );
  if (room.verdict === 'out') return { ...red('room', room.why), measured: true };
  if (!stands(view, post)) return red('room', `The gap round ${name} can be measured once it is set.`);
  const least = view.holes.find(({ label }) => label === hole);
  const cover = least ? leastCover(view, least) : 0;
  const enough = cover > 0 ? `${small(cover, view.plan.units)} or more` : 'free';
  return tickItem(view, 'room', hole, after(Math.max(changed, view.book.standAt(post))), {
    done: `The gap round ${name} was measured at the post.`,
    missing: `See that the gap from ${name} to the earth is ${enough} all round, measured at its tightest, and tick it.`,
    stale: `${capital(name)} or its hole was moved after the gap was measured: measure it again.`,
  });
}

/** A post that was bought too short does not reach its top, however well it stands. Nothing where nobody said what was bought. */
export function boughtItem(view: JobView, hole: string): GateItem[] {
  const { supplies } = view.plan;
  const planned = view.holes.find(({ label }) => label === hole);
  if (!planned || (!supplies?.bought && !supplies?.boughtFor)) return [];
  const post = lengthOf(view, planned);
  if (!post || post.bought === null) return [];
  const plain = thingName(postOf(hole), view.plan);
  const name = capital(plain);
  const { units } = view.plan;
  if (post.length === null)
    return [red('bought', `Whether ${plain} is long enough is not known. ${post.why}`)];
  if (post.short?.of === 'top')
    return [
      red(
        'bought',
        `${name} was bought ${small(post.short.by, units)} too short to reach its top: get a longer one, or have its top set lower on the plan.`,
      ),
    ];
  return [green('bought', `${name} as bought reaches its top.`)];
}

/** What this job asks for besides: each ticked like the rest, since the hole was last dug. */
export function askedItems(view: JobView, hole: string): GateItem[] {
  const asks = (view.plan.asks ?? []).filter(({ holes }) => !holes || holes.includes(hole));
  return asks.map(({ what }): GateItem => {
    const fresh = after(dugAt(view, hole));
    const tick = countedTick(view, 'asked', hole, fresh, Number.POSITIVE_INFINITY, what);
    return {
      ...countedItem('asked', tick, {
        done: `${capital(what)}: done.`,
        missing: `${capital(what)}: asked for by this job. See to it at hole ${hole}, and tick it.`,
        stale: `${capital(what)}: hole ${hole} was dug or read again since it was ticked. See that it is still right.`,
      }),
      asked: what,
    };
  });
}
