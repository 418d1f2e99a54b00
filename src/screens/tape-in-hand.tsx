import { type ComponentChildren, createContext } from 'preact';
import { useContext, useMemo, useState } from 'preact/hooks';
import type { TapeInHand } from '../measure/index.ts';
import { JobBookContext, useJobBook } from './job-book.ts';

type Choose = (hand: TapeInHand | null) => void;

const ChooseTapeContext = createContext<Choose | null>(null);

/** Chosen after this many entries of the log; another entry that is logged speaks for itself. */
interface Chosen {
  readonly after: number;
  readonly hand: TapeInHand | null;
}

/**
 * Which tape is in hand follows from the log: that of the last pull. Between choosing another and logging the first pull
 * with it, the choice is this page's; every figure under it is then what that tape must read.
 */
export function TapeInHandScope({ children }: { readonly children: ComponentChildren }) {
  const book = useJobBook();
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const pulls = book.situation.entries.filter(({ body }) => body.kind === 'pull').length;
  const hand = chosen?.after === pulls ? chosen.hand : book.situation.inHand;
  const shown = useMemo(
    () =>
      hand === book.situation.inHand ? book : { ...book, situation: { ...book.situation, inHand: hand } },
    [book, hand],
  );
  return (
    <JobBookContext.Provider value={shown}>
      <ChooseTapeContext.Provider value={(next) => setChosen({ after: pulls, hand: next })}>
        {children}
      </ChooseTapeContext.Provider>
    </JobBookContext.Provider>
  );
}

/** Takes another tape in hand. */
export function useChooseTape(): Choose {
  const choose = useContext(ChooseTapeContext);
  if (!choose) throw new Error('useChooseTape: no TapeInHandScope above this component');
  return choose;
}
