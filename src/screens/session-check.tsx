import { useEffect, useMemo, useState } from 'preact/hooks';
import { endName } from '../job/words.ts';
import { viewOf } from '../judge/view.ts';
import { capital } from '../judge/words.ts';
import { Button, ButtonRow, Caution, Problem } from '../ui/index.ts';
import { unbroken } from '../ui/unbroken.ts';
import { formatLength } from '../units/index.ts';
import { useJobBook } from './job-book.ts';
import { PullFlow } from './pull-flow.tsx';
import { heldTape } from './rise-words.ts';
import { sessionOf, sessionTitle } from './session.ts';
import { useHold } from './use-hold.ts';
import { useLog } from './use-log.ts';

const SKIP_COSTS =
  'A stake knocked meanwhile would then not show before posts fail to fit. The log will say that nobody looked.';

/** When work begins again after half a day: A–B and a witness are pulled again, with their own keypad, or passed over. */
export function SessionCheck() {
  const { situation, assessment } = useJobBook();
  const now = useNow();
  const { failed, log } = useLog();
  const [how] = useHold();
  const [open, setOpen] = useState(false);
  const [skipping, setSkipping] = useState(false);
  const session = useMemo(() => {
    const view = viewOf(situation);
    return view && !assessment.moved ? sessionOf(view, assessment.holes, now) : null;
  }, [situation, assessment, now]);
  const { plan } = situation;
  if (!plan || !session) return null;
  const { ask, why, found, without } = session;
  const tape = ask && heldTape(situation, ask, how);
  return (
    <Caution title={sessionTitle(session)}>
      {failed && <Problem text="Not saved; free some space, then tap again." />}
      {found !== null && <p>{unbroken(found)}</p>}
      {why !== '' && <p>{unbroken(why)}</p>}
      {ask && tape && (
        <>
          <p>
            {capital(endName(ask.from, plan))} to {endName(ask.to, plan)} should read{' '}
            <strong>{unbroken(formatLength(tape.m, plan.units))}</strong>, {tape.held}.
          </p>
          {skipping && <p>{SKIP_COSTS}</p>}
          <ButtonRow>
            {skipping ? (
              <Button onPress={() => void log({ kind: 'note', text: without })}>Go on without</Button>
            ) : (
              <Button onPress={() => setSkipping(true)}>Not this time</Button>
            )}
            <Button onPress={() => setOpen(true)}>Check {found === null ? 'A–B' : 'it'}</Button>
          </ButtonRow>
          {open && <PullFlow pull={ask} how={how} onClose={() => setOpen(false)} />}
        </>
      )}
    </Caution>
  );
}

/** The time when the screen was opened or last came to the front: a job is taken up again at one of these. */
function useNow(): number {
  const [now, setNow] = useState(Date.now);
  useEffect(() => {
    const onVisible = () => {
      if (document.visibilityState === 'visible') setNow(Date.now());
    };
    document.addEventListener('visibilitychange', onVisible);
    return () => document.removeEventListener('visibilitychange', onVisible);
  }, []);
  return now;
}
