// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Length } from '../../src/job/length.ts';
import type { KeypadProps } from '../../src/ui/index.ts';
import { Keypad } from '../../src/ui/index.ts';
import { unbroken } from '../../src/ui/unbroken.ts';

afterEach(cleanup);

function open(props: Partial<KeypadProps> = {}) {
  const onDone = vi.fn<(length: Length) => void>();
  const onClose = vi.fn();
  render(
    <Keypad
      title="Tape from A"
      units="ft-in-16"
      hint="Nail to nail, tape level."
      onDone={onDone}
      onClose={onClose}
      {...props}
    />,
  );
  return { onDone, onClose };
}

const tap = (...names: (string | RegExp)[]) => {
  for (const name of names) fireEvent.click(screen.getByRole('button', { name }));
};
const type = (text: string) => {
  for (const key of text) fireEvent.keyDown(document.body, { key });
};
const press = (key: string) => fireEvent.keyDown(document.body, { key });

describe('a reading by taps', () => {
  test('in feet, inches and sixteenths: five taps and one to read it', () => {
    const { onDone } = open();
    tap('1', '8', '′ ft', '6 inches', '5/16');
    expect(screen.getByText('18 feet 6 and 5/16 inches')).toBeTruthy();
    tap(unbroken('Read it: 18′ 6 5/16″'));
    expect(onDone).toHaveBeenCalledExactlyOnceWith({ m: 5.6467375, typed: '18′ 6 5/16″', units: 'ft-in-16' });
  });

  test('of what is never a foot begins with the whole inches', () => {
    const { onDone } = open({ from: 'inches' });
    expect(screen.getByText('First the whole inches')).toBeTruthy();
    tap('1 inch', '5/16', /^Read it/);
    expect(onDone.mock.calls[0]?.[0].typed).toBe('1 5/16″');
  });

  test('in thirty-seconds', () => {
    const { onDone } = open({ units: 'ft-in-32' });
    tap('1', '′ ft', '0 inches', '5/16', 'and 1/32', /^Read it/);
    expect(onDone.mock.calls[0]?.[0].typed).toBe('1′ 0 11/32″');
  });

  test.each([
    ['ft', ['1', '8', 'decimal point', '5', '3'], 18.53 * 0.3048, '18.53'],
    ['m', ['5', 'decimal point', '6', '4', '7'], 5.647, '5.647'],
    ['mm', ['5', '6', '4', '7'], 5.647, '5647'],
  ] as const)('in %s', (units, keys, m, typed) => {
    const { onDone } = open({ units });
    tap(...keys, /^Read it/);
    expect(onDone).toHaveBeenCalledExactlyOnceWith({ m, typed, units });
  });

  test('takes back the last step', () => {
    const { onDone } = open();
    tap('1', '8', '′ ft', '6 inches', '5/16', 'take back the last step', '3/8', /^Read it/);
    expect(onDone.mock.calls[0]?.[0].typed).toBe('18′ 6 3/8″');
  });

  test('a second tap on the main button hands nothing over twice', () => {
    const { onDone } = open();
    tap('3', '′ ft', /^Read it/, /^Read it/);
    expect(onDone).toHaveBeenCalledTimes(1);
  });
});

test('a reading that could not be saved can be handed over again', async () => {
  const saves = [Promise.resolve(), Promise.resolve()];
  const onDone = vi.fn(() => saves.pop());
  open({ onDone });
  type('18 6');
  press('Enter');
  press('Enter');
  expect(onDone).toHaveBeenCalledTimes(1);
  await new Promise((settled) => setTimeout(settled));
  press('Enter');
  expect(onDone).toHaveBeenCalledTimes(2);
});

test('another title is another reading', () => {
  const common = { units: 'mm', hint: '', onDone: vi.fn(), onClose: vi.fn() } as const;
  const { rerender } = render(<Keypad title="Gap" {...common} />);
  type('12');
  rerender(<Keypad title="Over" {...common} />);
  expect(screen.queryByText('12')).toBeNull();
});

describe('a reading by hardware keys', () => {
  test('typed as people write it, with Enter', () => {
    const { onDone } = open();
    type('18 6 5/16');
    press('Enter');
    expect(onDone).toHaveBeenCalledExactlyOnceWith({ m: 5.6467375, typed: '18 6 5/16', units: 'ft-in-16' });
  });

  test('Enter twice hands over once; a changed reading can be handed over again', () => {
    const { onDone } = open({ units: 'mm' });
    type('564');
    press('Enter');
    press('Enter');
    expect(onDone).toHaveBeenCalledTimes(1);
    type('7');
    press('Enter');
    expect(onDone.mock.calls[1]?.[0].typed).toBe('5647');
  });

  test('Backspace takes a character', () => {
    const { onDone } = open({ units: 'mm' });
    type('56478');
    press('Backspace');
    press('Enter');
    expect(onDone.mock.calls[0]?.[0].typed).toBe('5647');
  });

  test('keys that no length is written with, and shortcuts, are left alone', () => {
    const onDraft = vi.fn();
    open({ onDraft });
    press('F5');
    press('%');
    fireEvent.keyDown(document.body, { key: 'r', ctrlKey: true });
    expect(onDraft).not.toHaveBeenCalled();
  });
});

describe('what cannot be read', () => {
  test('is said in one sentence and stays', () => {
    const { onDone } = open();
    type('18');
    press('Enter');
    expect(screen.getByRole('alert').textContent).toMatch(/^Tape from A: “18” could be feet or inches/);
    expect(screen.getByText('18')).toBeTruthy();
    expect(onDone).not.toHaveBeenCalled();
    tap('′ ft', /^Read it/);
  });

  test('an empty reading says so', () => {
    open();
    tap('Read it');
    expect(screen.getByRole('alert').textContent).toMatch(/Tape from A is empty/);
  });

  test('beyond the bounds says which', () => {
    open({ units: 'm', bounds: { max: 30, maxName: 'the tape’s 30 m' } });
    type('31');
    press('Enter');
    expect(screen.getByRole('alert').textContent).toMatch(/more than the tape’s 30\u00a0m/);
  });
});

describe('beside what was expected', () => {
  test('shows it, and the difference as soon as there is one', () => {
    open({ expected: 5.6467375 });
    expect(screen.getByText('Expected 18′ 6 5/16″')).toBeTruthy();
    tap('1', '8', '′ ft', '6 inches', '1/2');
    expect(screen.getByText('3/16″ more')).toBeTruthy();
  });

  const question = 'This is 1′ more than expected: read it again, or keep it?';
  const check = (m: number) => (m > 5.9 ? question : null);

  test('a reading beyond belief is asked back, and kept only by a second choice', () => {
    const { onDone } = open({ check });
    type('19 6');
    press('Enter');
    expect(screen.getByRole('alert').textContent).toBe(question);
    press('Enter');
    expect(onDone).not.toHaveBeenCalled();
    tap('Keep it as read');
    expect(onDone.mock.calls[0]?.[0].typed).toBe('19 6');
  });

  test('or read again from the start', () => {
    const { onDone } = open({ check });
    type('19 6');
    press('Enter');
    tap('Read it again', '1', '8', '′ ft', '6 inches', /^Read it/);
    expect(onDone.mock.calls[0]?.[0].typed).toBe('18′ 6″');
  });

  test('a believable reading is not asked back', () => {
    const { onDone } = open({ check });
    type('18 6');
    press('Enter');
    expect(onDone).toHaveBeenCalledTimes(1);
  });
});

test('tells its owner what stands on it, and starts from a draft', () => {
  const onDraft = vi.fn();
  const { onDone } = open({ draft: '18 6', onDraft });
  type(' 1/2');
  expect(onDraft).toHaveBeenLastCalledWith('18 6 1/2');
  press('Enter');
  expect(onDone).toHaveBeenCalledTimes(1);
});
