import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Problem } from '../ui/problem.tsx';
import type { Part } from './part.ts';

type State<P> = { readonly part: ComponentType<P> } | { readonly trouble: string } | null;

/**
 * A part of the app that is loaded when it is first needed. It comes out of the phone's cache like all the rest.
 *
 * @param waiting stands in its place for that moment
 */
export function lazily<P extends object>(
  { now, load }: Part<P>,
  waiting: ComponentType<P>,
): ComponentType<P> {
  return function Lazily(props: P) {
    const [state, setState] = useState<State<P>>(() => {
      const part = now();
      return part && { part };
    });
    useEffect(() => {
      if (now()) return;
      load().then(
        (part) => setState({ part }),
        (error: unknown) => setState({ trouble: troubleWords(error) }),
      );
    }, []);
    const Part = state && 'part' in state ? state.part : waiting;
    if (state && 'trouble' in state) return <Problem text={state.trouble} />;
    return <Part {...props} />;
  };
}

const troubleWords = (error: unknown): string =>
  `A part of the app did not load (${error instanceof Error ? error.message : String(error)}): load the page again; what was logged is still on this phone.`;
