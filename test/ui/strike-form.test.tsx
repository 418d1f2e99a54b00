// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { StrikeForm } from '../../src/ui/index.ts';
import { REPEAT_TAP_MS } from '../../src/ui/repeat-tap.ts';

afterEach(cleanup);

let now = 0;
function strike() {
  const event = new MouseEvent('click', { bubbles: true });
  now += REPEAT_TAP_MS;
  Object.defineProperty(event, 'timeStamp', { value: now });
  fireEvent(screen.getByRole('button', { name: 'Strike it' }), event);
}

test('asks for a reason, and for words where the reason is another', () => {
  const onStrike = vi.fn();
  render(<StrikeForm what="A to stake 4: 18′ 6 5/16″" onStrike={onStrike} onClose={vi.fn()} />);
  strike();
  expect(screen.getByRole('alert').textContent).toMatch(/Reason is not chosen/);
  fireEvent.click(screen.getByRole('radio', { name: 'other' }));
  strike();
  expect(screen.getByRole('alert').textContent).toMatch(/In your words is empty/);
  expect(onStrike).not.toHaveBeenCalled();
  const words = screen.getByRole('textbox', { name: 'In your words' });
  fireEvent.input(words, { target: { value: 'tape was caught on a root' } });
  fireEvent.blur(words);
  strike();
  expect(onStrike).toHaveBeenCalledExactlyOnceWith('tape was caught on a root');
});

test('a chosen reason is enough', () => {
  const onStrike = vi.fn();
  render(<StrikeForm what="A to stake 4" onStrike={onStrike} onClose={vi.fn()} />);
  fireEvent.click(screen.getByRole('radio', { name: 'misread' }));
  strike();
  expect(onStrike).toHaveBeenCalledExactlyOnceWith('misread');
});
