// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { type DrawnHole, PlanDrawing } from '../../../src/ui/index.ts';

afterEach(cleanup);

const HOLES: readonly DrawnHole[] = [
  { label: '1', place: { x: 1, y: 4 }, state: 'staked' },
  { label: '2', place: { x: 3, y: 4 }, state: 'staked' },
  { label: '3', place: { x: 3, y: 6 }, state: 'planned', live: true },
  {
    label: 'P',
    place: { x: 1, y: 6 },
    state: 'set',
    verdict: 'out',
    nudge: { bearing: 0, words: 'Push post P 1″ toward post 3.' },
    ellipse: { semiMajor: 0.005, semiMinor: 0.002, bearing: 0.3 },
  },
];
const STAKES = { a: { x: 0, y: 0 }, b: { x: 4, y: 0 } };

test('tells in words all that it shows', () => {
  render(
    <PlanDrawing
      title="Shed, hole 3"
      units="m"
      holes={HOLES}
      stakes={STAKES}
      pulls={[
        { from: STAKES.a, to: { x: 3, y: 6 }, kind: 'live', words: 'from A to stake 3' },
        { from: { x: 1, y: 4 }, to: { x: 3, y: 4 }, kind: 'check', words: '1 to 2' },
      ]}
    />,
  );
  expect(screen.getByRole('img').getAttribute('aria-label')).toBe(
    'Shed, hole 3, seen from above. The line from A to B lies below the holes, A on the left. Holes 1, 2: staked. Hole 3: planned. ' +
      'Hole P: set, out. Being pulled now: from A to stake 3. Check pulls: 1 to 2. Push post P 1″ toward post 3. ' +
      'Ellipses are drawn 200 times too large.',
  );
});

test('says on the drawing by how much ellipses are enlarged', () => {
  const { container } = render(<PlanDrawing title="Shed" units="m" holes={HOLES} stakes={STAKES} />);
  expect(container.textContent).toMatch(/ellipses ×\d+/);
});

test('says nothing of ellipses where there are none', () => {
  const { container } = render(
    <PlanDrawing title="Shed" units="m" holes={HOLES.slice(0, 3)} stakes={STAKES} />,
  );
  expect(container.textContent).not.toMatch(/ellipse/);
});

test('holes can be pressed by their names', () => {
  const onHole = vi.fn();
  render(<PlanDrawing title="Shed" units="m" holes={HOLES} onHole={onHole} />);
  fireEvent.click(screen.getByRole('button', { name: 'Hole P: set, out' }));
  expect(onHole).toHaveBeenCalledExactlyOnceWith('P');
});

test('a tap where targets overlap means the nearest hole', () => {
  const onHole = vi.fn();
  const { container } = render(<PlanDrawing title="Shed" units="m" holes={HOLES} onHole={onHole} />);
  const label = [...container.querySelectorAll('.drawn-label')].find((text) => text.textContent === '2');
  const [clientX, clientY] = [Number(label?.getAttribute('x')), Number(label?.getAttribute('y'))];
  fireEvent.click(screen.getByRole('button', { name: 'Hole 1: staked' }), { detail: 1, clientX, clientY });
  expect(onHole).toHaveBeenCalledExactlyOnceWith('2');
});

test('an empty plan is said to be empty, and the first hole is drawn to the width that there is', () => {
  const width = vi.spyOn(HTMLElement.prototype, 'clientWidth', 'get').mockReturnValue(288);
  const { container, rerender } = render(<PlanDrawing title="Shed" units="m" holes={[]} />);
  expect(screen.getByText(/Nothing to draw yet/)).toBeTruthy();
  rerender(<PlanDrawing title="Shed" units="m" holes={HOLES} />);
  expect(container.querySelector('svg')?.getAttribute('width')).toBe('288');
  width.mockRestore();
});

test('says which face is touched and where the front is, on the drawing and in words', () => {
  const { container } = render(
    <PlanDrawing
      title="Shed"
      units="m"
      holes={HOLES}
      stakes={STAKES}
      faces={[{ hole: '3', bearing: 0, name: 'clockwise' }]}
      front={0}
    />,
  );
  const words = screen.getByRole('img').getAttribute('aria-label');
  expect(words).toMatch(/The plan’s front is to the right\./);
  expect(words).toMatch(/Touched: the clockwise face at hole 3\./);
  const shown = [...container.querySelectorAll('text')].map(({ textContent }) => textContent);
  expect(shown).toEqual(expect.arrayContaining(['clockwise', 'front']));
});

test('letters follow the size that the user has set for text', () => {
  const sizes = () =>
    [...document.querySelectorAll('.drawing text')].map((each) => Number(each.getAttribute('font-size')));
  const { unmount } = render(<PlanDrawing title="Shed" units="m" holes={HOLES} stakes={STAKES} />);
  const usual = Math.max(...sizes());
  unmount();
  document.documentElement.style.fontSize = '36px';
  render(<PlanDrawing title="Shed" units="m" holes={HOLES} stakes={STAKES} />);
  expect(Math.max(...sizes())).toBe(2 * usual);
  document.documentElement.style.fontSize = '';
});
