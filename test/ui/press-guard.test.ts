// @vitest-environment happy-dom
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { guardPresses } from '../../src/ui/press-guard.ts';
import { REPEAT_TAP_MS } from '../../src/ui/repeat-tap.ts';

guardPresses(document);

/** Later than any press of the test before. */
let start = 0;

beforeEach(() => {
  start += 10 * REPEAT_TAP_MS;
});

function button(): { node: HTMLButtonElement; pressed: () => number } {
  const node = document.createElement('button');
  const spy = vi.fn();
  node.addEventListener('click', spy);
  document.body.append(node);
  return { node, pressed: () => spy.mock.calls.length };
}

function press(node: HTMLElement, at: number, { x = 100, y = 700, detail = 1 } = {}): void {
  const event = new MouseEvent('click', { bubbles: true, cancelable: true, clientX: x, clientY: y, detail });
  Object.defineProperty(event, 'timeStamp', { value: start + at });
  node.dispatchEvent(event);
}

describe('guardPresses', () => {
  test('drops the second half of a double tap on what came up under it', () => {
    const [first, second] = [button(), button()];
    press(first.node, 0);
    press(second.node, 100, { x: 110 });
    expect([first.pressed(), second.pressed()]).toEqual([1, 0]);
  });

  test('lets a deliberate press through', () => {
    const [first, second] = [button(), button()];
    press(first.node, 0);
    press(second.node, REPEAT_TAP_MS + 1);
    expect(second.pressed()).toBe(1);
  });

  test('lets another key of the pad through at once, and the same key twice', () => {
    const [one, two] = [button(), button()];
    press(one.node, 0);
    press(two.node, 80, { x: 200 });
    press(two.node, 160, { x: 200 });
    expect([one.pressed(), two.pressed()]).toEqual([1, 2]);
  });

  test('does not touch a keyboard, which presses without a spot', () => {
    const [first, second] = [button(), button()];
    press(first.node, 0);
    press(second.node, 50, { x: 0, y: 0, detail: 0 });
    expect(second.pressed()).toBe(1);
  });

  test('a dropped press does not shield the next one', () => {
    const [first, second] = [button(), button()];
    press(first.node, 0);
    press(second.node, 100);
    press(second.node, REPEAT_TAP_MS + 50);
    expect(second.pressed()).toBe(1);
  });
});
