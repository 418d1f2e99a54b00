import { useEffect, useState } from 'preact/hooks';
import { Button, Problem } from '../../ui/index.ts';
import { useServices } from '../services.ts';

/** What is true of this phone just now: works without signal or not yet, keeps data or not, a newer version waits. */
export function PhoneState({ anyJobs }: { readonly anyJobs: boolean }) {
  const { book, offline, storage } = useServices();
  const [state, setState] = useState(offline.state);
  const [storageText, setStorageText] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => offline.subscribe(() => setState(offline.state())), [offline]);
  useEffect(() => {
    void storage(anyJobs).then(({ text }) => setStorageText(text));
  }, [storage, anyJobs]);
  useEffect(() => {
    void book.selfTest().then((problem) => setTrouble(problem?.text ?? null));
  }, [book]);
  return (
    <section class="phone-state" aria-label="This phone">
      {trouble && <Problem text={trouble} />}
      {state.trouble && <Problem text={state.trouble} />}
      <p>{state.ready ? 'Ready to work without signal.' : 'Not yet ready to work without signal.'}</p>
      <p>{anyJobs ? storageText : NO_JOB_YET}</p>
      {state.updateReady && (
        <Button onPress={() => void offline.applyUpdate()}>A newer version is here: change to it now</Button>
      )}
    </section>
  );
}

const NO_JOB_YET = 'A job is kept on this phone alone, until you back it up to a file.';
