import { length, type Vec } from '../../geometry/point.ts';
import { thingName } from '../../job/words.ts';
import { type AsBuilt, asBuiltSquare } from '../../judge/as-built.ts';
import { lengthTold, told } from '../../judge/frame-words.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { capital, moveWords, small } from '../../judge/words.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { smallStep } from '../../units/index.ts';

/** How far out of square rows and columns stand, and the two ways to cut to them. Nothing of another shape. */
export function SquareSection({ view, built }: { readonly view: JobView; readonly built: AsBuilt }) {
  const square = asBuiltSquare(view, built);
  if (!square) return null;
  const { units } = view.plan;
  const { difference, longer, rack, offRectangle } = square;
  const said = told(difference, smallStep(units));
  const equal = Math.abs(said.is) <= said.half;
  const apart = lengthTold({ is: Math.abs(difference.is), sigma: difference.sigma }, units);
  const front = lengthTold({ is: Math.abs(rack.is), sigma: rack.sigma }, units);
  return (
    <>
      <h3>Square</h3>
      <p>
        {unbroken(
          equal
            ? `The outer diagonals are equal as far as they are known: ${apart} between them.`
            : `Out of square: from ${longer[0]} to ${longer[1]} is the longer diagonal, by ${apart}. The front stands ${front} too far to the ${rack.is > 0 ? 'right' : 'left'} against the back, as you face the front.`,
        )}
      </p>
      <p>
        Either cut to the posts: the sides and the saw above. Or keep the frame square as it is drawn, laid so
        that it misses the posts least. How far each corner post then stands off its corner:
      </p>
      <ul class="record-list">
        {offRectangle.map(({ hole, off }) => (
          <li key={hole}>
            {unbroken(`${capital(thingName(postOf(hole), view.plan))}: ${offWords(view, hole, off)}`)}
          </li>
        ))}
      </ul>
    </>
  );
}

/** Its own distance first; the ways only where there is more than one. */
function offWords(view: JobView, hole: string, off: Vec): string {
  const { units } = view.plan;
  if (length(off) < smallStep(units) / 2) return 'nothing';
  const whole = small(length(off), units);
  const ways = moveWords(view.sited.get(hole)!.site, off, view.ground);
  return ways.startsWith(`${whole} `) ? ways : `${whole}, which is ${ways}`;
}
