import type { HoleAssessment } from '../../judge/types.ts';
import { Caution } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { isReady } from './hole-ready.ts';

/** Before a post goes into a hole that is not fit for it: once it stands, the hole is dug no deeper. */
export function HoleNotReady({ hole }: { readonly hole: HoleAssessment }) {
  if (isReady(hole)) return null;
  const { at, depth, width, room } = hole.dug;
  if (at === null)
    return (
      <Caution title={`hole ${hole.hole} is not dug`}>
        <p>
          It is not dug yet, or its depth and width are not logged. See to that in Dig before a post goes in.
        </p>
      </Caution>
    );
  return (
    <Caution title={`hole ${hole.hole} is not ready`}>
      {[depth, width, room]
        .filter(({ verdict, quantity }) => (quantity === 'room' ? verdict === 'out' : verdict !== 'in'))
        .map(({ quantity, why }) => (
          <p key={quantity}>{unbroken(why)}</p>
        ))}
    </Caution>
  );
}
