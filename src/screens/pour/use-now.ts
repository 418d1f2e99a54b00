import { useEffect, useState } from 'preact/hooks';

/** Often enough for whole minutes, milliseconds. */
const LOOK_EVERY_MS = 10_000;

/** What time it is, milliseconds since 1970, looked at again while the screen is open. */
export function useNow(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), LOOK_EVERY_MS);
    return () => clearInterval(timer);
  }, []);
  return now;
}
