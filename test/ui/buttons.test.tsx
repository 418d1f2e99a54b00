// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { Button } from '../../src/ui/index.ts';
import { REPEAT_TAP_MS } from '../../src/ui/repeat-tap.ts';

afterEach(cleanup);

function clickAt(timeStamp: number) {
  const event = new MouseEvent('click', { bubbles: true });
  Object.defineProperty(event, 'timeStamp', { value: timeStamp });
  fireEvent(screen.getByRole('button'), event);
}

test('a nudged second tap is ignored, a later one is not', () => {
  const onPress = vi.fn();
  render(<Button onPress={onPress}>Stake driven</Button>);
  clickAt(1000);
  clickAt(1000 + REPEAT_TAP_MS - 1);
  expect(onPress).toHaveBeenCalledTimes(1);
  clickAt(1000 + REPEAT_TAP_MS);
  expect(onPress).toHaveBeenCalledTimes(2);
});

test('the tap that redraws the button does not let the second one through', () => {
  const onPress = vi.fn();
  const { rerender } = render(<Button onPress={onPress}>Stake 4 driven</Button>);
  clickAt(1000);
  rerender(<Button onPress={onPress}>Stake 5 driven</Button>);
  clickAt(1150);
  expect(onPress).toHaveBeenCalledTimes(1);
});

test('a disabled button does nothing', () => {
  const onPress = vi.fn();
  render(
    <Button disabled onPress={onPress}>
      Pour
    </Button>,
  );
  fireEvent.click(screen.getByRole('button', { name: 'Pour' }));
  expect(onPress).not.toHaveBeenCalled();
});
