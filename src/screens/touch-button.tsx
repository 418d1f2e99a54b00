import { Button } from '../ui/index.ts';
import { lazily } from './lazily.tsx';
import { Opening } from './opening.tsx';
import { part } from './part.ts';
import type { PullEnds } from './retouched.ts';
import type { TouchProps } from './touch-props.ts';

/** Loaded once it is wanted: most tapes touch what is proposed. */
export const OpenTouch = lazily<TouchProps>(
  part(async () => (await import('./touch-sheet.tsx')).TouchSheet),
  ({ onClose }) => <Opening title="Where the tape touches" onClose={onClose} />,
);

/** Only a post or pier has more than one place to touch: a stake has its nail. */
export function TouchButton({ from, to, onPress }: PullEnds & { readonly onPress: () => void }) {
  if (from.thing.kind !== 'post' && to.thing.kind !== 'post') return null;
  return <Button onPress={onPress}>It touches another place, or higher up</Button>;
}
