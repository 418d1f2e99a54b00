import { cleanup, configure, render, screen } from '@testing-library/preact';
import type { ComponentType } from 'preact';
import { expect, vi } from 'vitest';
import type { Body, Entry } from '../../../src/job/entry-schema.ts';
import { currentPlan, standing } from '../../../src/job/log.ts';
import type { Plan } from '../../../src/job/plan-schema.ts';
import { JobBookContext } from '../../../src/screens/job-book.ts';
import type { PhaseProps } from '../../../src/screens/phase-props.ts';
import { type Services, ServicesContext } from '../../../src/screens/services.ts';
import { TapeInHandScope } from '../../../src/screens/tape-in-hand.tsx';
import { useJob } from '../../../src/screens/use-job.ts';
import type { FieldBook } from '../../../src/store/field-book.ts';
import { bookOn, phone } from '../../store/fake-store.ts';

/** Looking a role up in a whole page takes a busy machine seconds. A test that hangs still ends. */
configure({ asyncUtilTimeout: 8000 });
vi.setConfig({ testTimeout: 30_000 });

/** A job on a phone of its own, seen through one phase's screen. */
export interface OpenScreen {
  readonly book: FieldBook;
  readonly jobId: string;
  readonly log: () => Promise<Entry[]>;
  /** The plan that stands on disk. */
  readonly plan: () => Promise<Plan>;
}

/** A screen has no business with these; one that calls them is told so. */
const ELSEWHERE: Omit<Services, 'book'> = {
  kept: null,
  offline: {
    state: () => ({ ready: false, updateReady: false, trouble: null }),
    subscribe: () => () => {},
    applyUpdate: () => Promise.reject(new Error('no update here')),
  },
  storage: () => Promise.reject(new Error('no storage state here')),
};

/** Until what a rendering leaves to do after it is painted is done: two frames on, as nobody types faster. */
export async function painted(): Promise<void> {
  const frame = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
  await frame();
  await frame();
}

/** Writes the entries, opens the screen, and waits until it has read them back. */
export async function openScreen(
  Screen: ComponentType<PhaseProps>,
  first: readonly Body[],
  hole: string | null = null,
): Promise<OpenScreen> {
  cleanup();
  const book = bookOn(phone());
  const { id } = await book.createJob(first);
  const Opened = () => {
    const job = useJob(id);
    if (job.at !== 'open') return null;
    return (
      <JobBookContext.Provider value={job.book}>
        <TapeInHandScope>
          <Screen hole={hole} />
        </TapeInHandScope>
      </JobBookContext.Provider>
    );
  };
  render(
    <ServicesContext.Provider value={{ book, ...ELSEWHERE }}>
      <Opened />
    </ServicesContext.Provider>,
  );
  await screen.findByRole('main');
  await painted();
  const log = () => book.loadLog(id);
  const plan = async () => {
    const stands = currentPlan(standing(await log()));
    expect(stands).not.toBeNull();
    return stands!;
  };
  return { book, jobId: id, log, plan };
}
