// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Verdict } from '../../src/judge/types.ts';
import {
  Figure,
  GateList,
  HoleStrip,
  holeWords,
  JudgementTable,
  PullRow,
  VerdictMark,
  verdictWord,
} from '../../src/ui/index.ts';
import { formatLength, UNITS } from '../../src/units/index.ts';

afterEach(cleanup);

const VERDICTS: readonly Verdict[] = ['in', 'out', 'unsure', 'unmeasured'];

describe('VerdictMark', () => {
  test.each(VERDICTS)('%s is a word and a shape of its own', (verdict) => {
    const { container } = render(<VerdictMark verdict={verdict} />);
    expect(screen.getByText(verdict)).toBeTruthy();
    const others = VERDICTS.filter((other) => other !== verdict).map((other) => shapeOf(other, true));
    expect(others).not.toContain(container.querySelector('g')?.innerHTML);
  });

  test.each(['in', 'out', 'unsure'] as const)(
    '%s without a spare reading says so, and is hollow',
    (verdict) => {
      render(<VerdictMark verdict={verdict} checked={false} />);
      expect(screen.getByText(`${verdict}, unchecked`)).toBeTruthy();
      expect(document.querySelector('.shape-hollow')).toBeTruthy();
      expect(document.querySelector('.shape-filled')).toBeNull();
    },
  );

  test('what is in without a spare reading has no tick, and no colour of what is in', () => {
    render(<VerdictMark verdict="in" checked={false} />);
    expect(document.querySelector('.shape-sign')).toBeNull();
    expect(document.querySelector('.shape-half')).toBeTruthy();
    expect(document.querySelector('.verdict-unchecked')).toBeTruthy();
  });

  test('what was in before the pour has a word of its own in a strip, and no tick', () => {
    const holes = [
      { label: '1', state: 'poured', verdict: 'in', checked: true, beforePour: true },
      { label: '2', state: 'poured', verdict: 'out', checked: true, beforePour: true },
    ] as const;
    const { container } = render(<HoleStrip label="Posts" holes={holes} />);
    expect(screen.getByText('in before the pour')).toBeTruthy();
    expect(screen.getByText('out')).toBeTruthy();
    expect(container.querySelector('.shape-in .shape-sign')).toBeNull();
    expect(container.querySelector('.shape-in .shape-half')).toBeTruthy();
    expect(holeWords(holes[0])).toBe('poured, in before the pour');
  });

  test('what is unmeasured is not also called unchecked', () => {
    expect(verdictWord('unmeasured', false)).toBe('unmeasured');
  });
});

function shapeOf(verdict: Verdict, checked: boolean): string | undefined {
  const { container, unmount } = render(<VerdictMark verdict={verdict} checked={checked} />);
  const shape = container.querySelector('g')?.innerHTML;
  unmount();
  return shape;
}

describe('Figure', () => {
  test.each(UNITS)('shows in %s just what formatLength writes, and says it in words', (units) => {
    const { container } = render(<Figure m={5.6467375} units={units} />);
    expect(container.textContent).toBe(formatLength(5.6467375, units));
    expect(screen.getByRole('img').getAttribute('aria-label')).toMatch(/feet|metres/);
  });

  test('what is not a number is a dash, not a figure', () => {
    const { container } = render(<Figure m={Number.NaN} units="m" />);
    expect(container.textContent).toBe('—');
  });
});

test('PullRow says what the tape touches and how it is held', () => {
  const { container } = render(
    <PullRow live from="from A’s nail" held="tape level" m={3.048} units="ft-in-16" />,
  );
  expect(container.textContent).toBe('from A’s nail tape level10′ 0″');
});

describe('HoleStrip', () => {
  test('each hole has its label and its word', () => {
    const onHole = vi.fn();
    render(
      <HoleStrip
        label="Holes"
        onHole={onHole}
        holes={[
          { label: '1', state: 'set', verdict: 'in', checked: false },
          { label: '2', state: 'dug', current: true },
          { label: '3', state: 'planned', href: '#/3' },
        ]}
      />,
    );
    fireEvent.click(screen.getByRole('button', { name: /Hole 1\s*in, unchecked/ }));
    expect(onHole).toHaveBeenCalledExactlyOnceWith('1');
    expect(screen.getByRole('button', { name: /Hole 2/ }).getAttribute('aria-current')).toBe('true');
    expect(screen.getByRole('link', { name: /Hole 3\s*planned/ }).getAttribute('href')).toBe('#/3');
  });

  test('in words: state first, then the verdict', () => {
    expect(holeWords({ state: 'set', verdict: 'unmeasured' })).toBe('set, unmeasured');
    expect(holeWords({ state: 'planned' })).toBe('planned');
  });
});

test('GateList puts what is missing first', () => {
  render(
    <GateList
      label="Before concrete"
      items={[
        { item: 'depth', green: true, text: 'Depth is enough.' },
        { item: 'plumb', green: false, text: 'Plumb is unmeasured.' },
      ]}
    />,
  );
  const texts = screen.getAllByRole('listitem').map((item) => item.textContent);
  expect(texts).toEqual(['missing: Plumb is unmeasured.', 'done: Depth is enough.']);
});

describe('JudgementTable', () => {
  const row = {
    name: 'place',
    tolerance: '± 1/2″',
    verdict: 'in',
    checked: false,
    text: 'in, 1/8″',
    why: 'One tape only.',
  } as const;

  test('an unchecked verdict says so even where its text does not', () => {
    render(<JudgementTable label="Post 4" rows={[row]} />);
    expect(screen.getByText(/in, 1\/8″, unchecked/)).toBeTruthy();
  });

  test('the reason opens under its row, or stands there on paper', () => {
    const { container, rerender } = render(<JudgementTable label="Post 4" rows={[row]} />);
    expect(container.querySelector('details > p')?.textContent).toBe('One tape only.');
    rerender(<JudgementTable label="Post 4" rows={[row]} why="always" />);
    expect(container.querySelector('details')).toBeNull();
    expect(screen.getByText('One tape only.')).toBeTruthy();
  });
});
