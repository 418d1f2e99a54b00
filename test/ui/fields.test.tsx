// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Length } from '../../src/job/length.ts';
import { CheckField, ChoiceField, LengthField, NumberField, TextField } from '../../src/ui/index.ts';
import { readNumber } from '../../src/ui/number-field.tsx';

afterEach(cleanup);

const box = (name: string) => screen.getByRole<HTMLInputElement>('textbox', { name });
function write(name: string, value: string) {
  fireEvent.input(box(name), { target: { value } });
  fireEvent.blur(box(name));
}
/** The text of all that `aria-describedby` points at. */
const describedText = (element: Element) =>
  (element.getAttribute('aria-describedby') ?? '')
    .split(' ')
    .map((id) => document.getElementById(id)?.textContent)
    .join(' | ');

describe('LengthField', () => {
  const twelve: Length = { m: 3.6576, typed: '12′', units: 'ft-in-16' };

  test('shows the value and where it comes from, and passes a good one on', () => {
    const onChange = vi.fn();
    render(
      <LengthField label="Radius" value={twelve} units="ft-in-16" onChange={onChange} from="the example" />,
    );
    expect(box('Radius').value).toBe('12′');
    expect(describedText(box('Radius'))).toMatch(/From: the example\./);
    write('Radius', "12' 6");
    expect(onChange).toHaveBeenCalledExactlyOnceWith({ m: 3.81, typed: "12' 6", units: 'ft-in-16' });
  });

  test('keeps rubbish on the screen with a sentence, and passes nothing on', () => {
    const onChange = vi.fn();
    render(<LengthField label="Radius" value={twelve} units="ft-in-16" onChange={onChange} />);
    for (const rubbish of ['', 'abc', '-3', '0', '1e9']) {
      write('Radius', rubbish);
      expect(box('Radius').value).toBe(rubbish);
      expect(box('Radius').getAttribute('aria-invalid')).toBe('true');
      expect(describedText(box('Radius'))).toMatch(/^Radius.*\./);
    }
    expect(onChange).not.toHaveBeenCalled();
    write('Radius', '12′');
    expect(box('Radius').getAttribute('aria-invalid')).toBe('false');
    expect(screen.queryByRole('alert')).toBeNull();
  });

  test('commits on Enter', () => {
    const onChange = vi.fn();
    render(<LengthField label="Radius" value={null} units="m" onChange={onChange} />);
    fireEvent.input(box('Radius'), { target: { value: '3.6' } });
    fireEvent.keyDown(box('Radius'), { key: 'Enter' });
    expect(onChange).toHaveBeenCalledExactlyOnceWith({ m: 3.6, typed: '3.6', units: 'm' });
  });

  test('leaving an untouched field changes nothing', () => {
    const onChange = vi.fn();
    render(<LengthField label="Radius" value={twelve} units="ft-in-16" onChange={onChange} />);
    fireEvent.blur(box('Radius'));
    expect(onChange).not.toHaveBeenCalled();
  });

  test('never shows a number without its unit', () => {
    render(
      <LengthField
        label="Radius"
        value={{ m: 3.6, typed: '3.6', units: 'm' }}
        units="m"
        onChange={vi.fn()}
      />,
    );
    expect(box('Radius').value).toBe('3.600 m');
  });

  test('follows a change from outside', () => {
    const { rerender } = render(
      <LengthField label="Radius" value={twelve} units="ft-in-16" onChange={vi.fn()} />,
    );
    write('Radius', 'abc');
    rerender(
      <LengthField
        label="Radius"
        value={{ ...twelve, typed: '13′', m: 3.9624 }}
        units="ft-in-16"
        onChange={vi.fn()}
      />,
    );
    expect(box('Radius').value).toBe('13′');
    expect(screen.queryByRole('alert')).toBeNull();
  });
});

describe('NumberField', () => {
  test('passes a number on', () => {
    const onChange = vi.fn();
    render(
      <NumberField label="Posts" value={10} min={3} max={200} whole onChange={onChange} suffix="posts" />,
    );
    write('Posts', '12');
    expect(onChange).toHaveBeenCalledExactlyOnceWith(12);
  });

  test.each(['', 'ten', '-3', '0', '1e9', '3.5', '201', '∞'])('refuses “%s” in a sentence', (text) => {
    const read = readNumber(text, 'Posts', { min: 3, max: 200, whole: true });
    expect(read.ok).toBe(false);
    expect(!read.ok && read.problem.text).toMatch(/^Posts.*(from 3 to 200)\.$/);
  });

  test.each([
    ['3,5', 3.5],
    ['−2', -2],
    ['.5', 0.5],
  ])('reads “%s” as %d', (text, value) => {
    expect(readNumber(text, 'Angle', { min: -10, max: 10 })).toEqual({ ok: true, value });
  });
});

test('TextField refuses emptiness where something is needed, and what is too long', () => {
  const onChange = vi.fn();
  render(<TextField label="Name" value="Yurt" maxLength={8} required onChange={onChange} />);
  write('Name', '   ');
  expect(screen.getByRole('alert').textContent).toBe('Name is empty: type something.');
  write('Name', 'A long name');
  expect(screen.getByRole('alert').textContent).toMatch(/shorten it to 8/);
  expect(onChange).not.toHaveBeenCalled();
  write('Name', ' Deck ');
  expect(onChange).toHaveBeenCalledExactlyOnceWith('Deck');
});

test('ChoiceField is a group of radio buttons', () => {
  const onChange = vi.fn();
  render(
    <ChoiceField
      label="Front"
      hint="What stands at the plan’s front."
      value="post"
      choices={[
        { value: 'post', label: 'a post' },
        { value: 'flat', label: 'a flat' },
      ]}
      onChange={onChange}
    />,
  );
  const group = screen.getByRole('group', { name: 'Front' });
  expect(describedText(group)).toBe('What stands at the plan’s front.');
  expect(screen.getByRole<HTMLInputElement>('radio', { name: 'a post' }).checked).toBe(true);
  fireEvent.click(screen.getByRole('radio', { name: 'a flat' }));
  expect(onChange).toHaveBeenCalledExactlyOnceWith('flat');
});

test('CheckField says yes and no', () => {
  const onChange = vi.fn();
  render(<CheckField label="A pier in the middle" value={false} onChange={onChange} />);
  fireEvent.click(screen.getByRole('checkbox', { name: 'A pier in the middle' }));
  expect(onChange).toHaveBeenCalledExactlyOnceWith(true);
});

test('a default says that it is only the usual value, beside where it comes from', () => {
  render(
    <LengthField
      label="Gravel"
      hint="Under the concrete."
      usual="common practice"
      value={null}
      units="m"
      onChange={() => {}}
    />,
  );
  expect(describedText(box('Gravel'))).toBe(
    'Under the concrete. The usual value, not yet yours: common practice.',
  );
});
