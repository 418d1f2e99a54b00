import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { type Length, typedLength } from '../job/length.ts';
import type { Bounds, Units } from '../units/index.ts';
import { entryText, type KeypadEntry, startEntry, takeBack, typeText } from './keypad-entry.ts';
import { REPEAT_TAP_MS } from './repeat-tap.ts';

export interface KeypadTask {
  /** How a refusal names the reading. */
  readonly title: string;
  readonly units: Units;
  readonly bounds?: Bounds;
  /** Asks back when a reading is hard to believe; null when it is not. The user must then choose to keep it. */
  readonly check?: (m: number) => string | null;
  /** `inches`: what is read is never a foot, and the pad begins with the inches. */
  readonly from?: 'feet' | 'inches';
  /** Text left from before. */
  readonly draft?: string;
  /** Told of every change, so that the owner can keep what was entered. */
  readonly onDraft?: (text: string) => void;
  /**
   * Takes the reading over, once. While a returned promise is open nothing more is handed over; when it settles and the keypad
   * is still there (the reading could not be saved), it can be handed over again. Without a promise it can after the time of a
   * repeat tap.
   */
  readonly onDone: (length: Length) => void | Promise<void>;
}

export interface KeypadState {
  readonly entry: KeypadEntry;
  /** Metres, or null while the entry is no length within bounds. */
  readonly m: number | null;
  readonly problem: string | null;
  /** The belief question, while it waits for an answer. */
  readonly question: string | null;
  put(next: KeypadEntry): void;
  back(): void;
  restart(): void;
  finish(keepAsRead: boolean): void;
}

/** What the keypad knows and does: taps, hardware keys, refusal, the belief question, handing over. */
export function useKeypad(task: KeypadTask): KeypadState {
  const { title, units, bounds } = task;
  const [entry, setEntry] = useState<KeypadEntry>(() => startEntry(units, task.draft, task.from));
  const [problem, setProblem] = useState<string | null>(null);
  const [question, setQuestion] = useState<string | null>(null);
  // Keys can come faster than the screen is drawn anew, so the handlers read the entry from here.
  const now = useRef(entry);
  // One reading is handed over once, however often Enter and the button are pressed while it is being saved.
  const handedOver = useRef(false);

  const put = (next: KeypadEntry) => {
    now.current = next;
    handedOver.current = false;
    setEntry(next);
    setProblem(null);
    setQuestion(null);
    task.onDraft?.(entryText(next));
  };
  const back = () => put(takeBack(now.current, units));
  const finish = (keepAsRead: boolean) => {
    if (handedOver.current) return;
    const read = typedLength(entryText(now.current), units, title, bounds);
    if (!read.ok) return setProblem(read.problem.text);
    const doubt = keepAsRead ? null : (task.check?.(read.value.m) ?? null);
    if (doubt !== null) return setQuestion(doubt);
    handedOver.current = true;
    const saving = task.onDone(read.value);
    const again = () => {
      handedOver.current = false;
    };
    if (saving instanceof Promise) void saving.finally(again);
    else setTimeout(again, REPEAT_TAP_MS);
  };
  useHardwareKeys({
    type: (character) => put(typeText(now.current, character)),
    back,
    // While the question waits, Enter must not answer it unseen.
    enter: () => question === null && finish(false),
  });

  const read = typedLength(entryText(entry), units, title, bounds);
  const m = read.ok ? read.value.m : null;
  return {
    entry,
    m,
    problem,
    question,
    put,
    back,
    restart: () => put(startEntry(units, '', task.from)),
    finish,
  };
}

/** Characters that lengths are written with. */
const LENGTH_CHARACTER = /^[\d.,/\-\s'"′″a-z]$/i;

interface KeyActions {
  readonly type: (character: string) => void;
  readonly back: () => void;
  readonly enter: () => void;
}

function useHardwareKeys(actions: KeyActions): void {
  const latest = useRef(actions);
  latest.current = actions;
  // A layout effect, so that no key reaches a keypad that is gone.
  useLayoutEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (actOn(event, latest.current)) event.preventDefault();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, []);
}

/** True when the key was one of ours. Enter and Space on a focused button belong to that button. */
function actOn(event: KeyboardEvent, { type, back, enter }: KeyActions): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  const onButton = event.target instanceof HTMLButtonElement;
  if (onButton && (event.key === 'Enter' || event.key === ' ')) return false;
  if (event.key === 'Enter') enter();
  else if (event.key === 'Backspace') back();
  else if (LENGTH_CHARACTER.test(event.key)) type(event.key);
  else return false;
  return true;
}
