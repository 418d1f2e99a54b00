// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { Frame, type SaveMark } from '../../src/ui/index.ts';
import { Notice, NoticeContext } from '../../src/ui/notice.tsx';

afterEach(cleanup);

test.each<[SaveMark, string]>([
  ['saved', '✓ saved'],
  ['saving', 'saving…'],
  ['failed', 'NOT saved'],
])('%s is said as “%s”', (save, words) => {
  render(
    <Frame name="Yurt" save={save}>
      text
    </Frame>,
  );
  expect(screen.getByText(words)).toBeTruthy();
});

test('says what was not saved, as an alert', () => {
  render(
    <Frame name="Yurt" save="failed" saveProblem="The reading is NOT saved: free some space.">
      text
    </Frame>,
  );
  expect(screen.getByRole('alert').textContent).toBe('The reading is NOT saved: free some space.');
});

test('shows the phases as links, with the present one marked and its count', () => {
  render(
    <Frame
      name="Yurt"
      jobsHref="#/"
      tabs={[
        { label: 'Plan', href: '#p' },
        { label: 'Stake', href: '#s', count: '3 of 11', current: true },
      ]}
    >
      text
    </Frame>,
  );
  const stake = screen.getByRole('link', { name: 'Stake 3 of 11' });
  expect(stake.getAttribute('aria-current')).toBe('page');
  expect(screen.getByRole('link', { name: 'Plan' }).getAttribute('aria-current')).toBeNull();
  expect(screen.getByRole('link', { name: /Jobs/ }).getAttribute('href')).toBe('#/');
});

test('the toast region is there before anything is said in it, and Undo takes back', () => {
  const onUndo = vi.fn();
  const { rerender, container } = render(<Frame name="Yurt">text</Frame>);
  const region = container.querySelector('.toast-region');
  expect(region?.getAttribute('aria-live')).toBe('polite');
  rerender(
    <Frame name="Yurt" toast={{ text: 'Stake 4 driven, saved.', onUndo }}>
      text
    </Frame>,
  );
  expect(region?.textContent).toBe('Stake 4 driven, saved.Undo');
  fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
  expect(onUndo).toHaveBeenCalledTimes(1);
});

test('a notice stands on every page from the moment it is told, also one told before the page was there', async () => {
  const notice = new Notice();
  const page = (
    <NoticeContext.Provider value={notice}>
      <Frame name="Yurt">text</Frame>
    </NoticeContext.Provider>
  );
  render(page);
  expect(screen.queryByRole('alert')).toBeNull();
  notice.tell('Storage: close the other window.');
  expect((await screen.findByRole('alert')).textContent).toBe('Storage: close the other window.');
  cleanup();
  render(page);
  expect(screen.getByRole('alert').textContent).toBe('Storage: close the other window.');
});
