// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { Button, Sheet } from '../../src/ui/index.ts';

afterEach(cleanup);

function open(onClose = vi.fn()) {
  const view = render(
    <Sheet title="Strike an entry" onClose={onClose} actions={<Button onPress={() => {}}>Last</Button>}>
      <Button onPress={() => {}}>Middle</Button>
    </Sheet>,
  );
  return { onClose, ...view };
}

const button = (name: string) => screen.getByRole('button', { name });

test('is named by its title and takes the focus', () => {
  open();
  expect(screen.getByRole('dialog', { name: 'Strike an entry' })).toBeTruthy();
  expect(document.activeElement?.textContent).toBe('Strike an entry');
});

test('Tab goes round inside it', () => {
  open();
  button('Last').focus();
  fireEvent.keyDown(button('Last'), { key: 'Tab' });
  expect(document.activeElement).toBe(button('Back'));
  fireEvent.keyDown(button('Back'), { key: 'Tab', shiftKey: true });
  expect(document.activeElement).toBe(button('Last'));
});

test('Tab in the middle is left to the browser', () => {
  open();
  button('Middle').focus();
  const untouched = fireEvent.keyDown(button('Middle'), { key: 'Tab' });
  expect(untouched).toBe(true);
});

test('closes by its button, by Esc and by the back button', () => {
  const { onClose } = open();
  fireEvent.click(button('Back'));
  screen.getByRole('dialog').dispatchEvent(new Event('cancel', { cancelable: true }));
  dispatchEvent(new PopStateEvent('popstate'));
  expect(onClose).toHaveBeenCalledTimes(3);
});

test('gives the focus back', () => {
  const opener = document.createElement('button');
  document.body.append(opener);
  opener.focus();
  open().unmount();
  expect(document.activeElement).toBe(opener);
  opener.remove();
});

test('one sheet after another adds one step to the history, not two', () => {
  history.replaceState(null, '');
  const before = history.length;
  open().unmount();
  open().unmount();
  expect(history.length).toBe(before + 1);
  expect(history.state).toEqual({ sheet: 'left' });
});
