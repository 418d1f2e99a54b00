import type { EntryOf, HeightPoint, Hold, Side } from '../../job/entry-schema.ts';
import { ofKind } from '../../job/log.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { RodFlow } from '../heights/rod-flow.tsx';
import { lazily } from '../lazily.tsx';
import { Opening } from '../opening.tsx';
import { part } from '../part.ts';
import { PullFlow, type PullToRead } from '../pull-flow.tsx';
import { StringFlow } from '../stake/string-flow.tsx';
import type { FacesSheetProps } from './faces-sheet.tsx';
import { PlumbFlow } from './plumb-flow.tsx';
import { StrikeOne } from './strike-one.tsx';
import type { TwistFlowProps } from './twist-flow.tsx';

/** The reading that is being taken. */
export type OpenFlow =
  | { readonly take: 'pull'; readonly pull: PullToRead }
  | { readonly take: 'string' }
  | { readonly take: 'plumb'; readonly side: Side }
  | { readonly take: 'twist' }
  | { readonly take: 'faces' }
  | { readonly take: 'strike'; readonly entry: EntryOf<'pull'> }
  | { readonly take: 'rod'; readonly on: HeightPoint; readonly expected: number | null };

const Twist = lazily<TwistFlowProps>(
  part(async () => (await import('./twist-flow.tsx')).TwistFlow),
  ({ hole, onClose }) => <Opening title={`How post ${hole} is turned`} onClose={onClose} />,
);

const Faces = lazily<FacesSheetProps>(
  part(async () => (await import('./faces-sheet.tsx')).FacesSheet),
  ({ hole, onClose }) => <Opening title={`At each face of post ${hole}`} onClose={onClose} />,
);

export interface SetFlowProps {
  readonly flow: OpenFlow;
  readonly hole: string;
  readonly how: Hold['how'];
  readonly setup: string;
  readonly view: JobView;
  readonly onClose: () => void;
}

/** Takes one reading of whatever kind is open. */
export function SetFlow({ flow, hole, how, setup, view, onClose }: SetFlowProps) {
  switch (flow.take) {
    case 'pull':
      return <PullFlow pull={flow.pull} how={how} onClose={onClose} />;
    case 'string':
      return <StringFlow thing={postOf(hole)} onClose={onClose} />;
    case 'plumb': {
      const last = ofKind(view.entries, 'plumb').at(-1)?.body ?? null;
      return <PlumbFlow view={view} hole={hole} side={flow.side} last={last} onClose={onClose} />;
    }
    case 'twist':
      return <Twist view={view} hole={hole} onClose={onClose} />;
    case 'faces':
      return <Faces view={view} hole={hole} onClose={onClose} />;
    case 'strike':
      return <StrikeOne view={view} doubted={flow.entry} onClose={onClose} />;
    case 'rod':
      return <RodFlow view={view} on={flow.on} setup={setup} expected={flow.expected} onClose={onClose} />;
  }
}
