// @vitest-environment happy-dom
import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, describe, expect, it, test } from 'vitest';
import { Profile } from '../../../src/ui/profile/profile.tsx';
import { layOutProfile } from '../../../src/ui/profile/profile-layout.ts';
import type { ProfiledHole } from '../../../src/ui/profile/profiled.ts';

afterEach(cleanup);

const hole = (label: string, at: number, more: Partial<ProfiledHole> = {}): ProfiledHole => ({
  label,
  at,
  postWidth: 0.14,
  holeWidth: 0.4,
  ground: -0.2,
  groundMeasured: true,
  bottom: -1.3,
  dug: true,
  gravel: 0.15,
  top: 0.6,
  topMeasured: true,
  cut: null,
  kind: 'post',
  ...more,
});

test('tells in words all that it shows', () => {
  render(
    <Profile
      title="Shed"
      units="mm"
      frost={0.9}
      lines={[
        [
          hole('1', 0, { cut: 0.58 }),
          hole('2', 2, {
            groundMeasured: false,
            ground: 0,
            bottom: -1,
            dug: false,
            topMeasured: false,
            gravel: 0,
          }),
        ],
        [hole('P', 0, { kind: 'pier', bottom: null })],
      ]}
    />,
  );
  expect(screen.getByRole('img').getAttribute('aria-label')).toBe(
    'Shed, seen from the side; frost line 900 mm below the ground. ' +
      'Post 1: top 600 mm above the benchmark, cut 580 mm above the benchmark, ground 200 mm below the benchmark, hole 1100 mm deep, gravel 150 mm. ' +
      'Post 2: top 600 mm above the benchmark as planned, ground level with the benchmark, not measured, hole 1000 mm deep as planned. ' +
      'Pier P: top 600 mm above the benchmark, ground 200 mm below the benchmark, depth not known, gravel 150 mm.',
  );
});

test('what nobody measured is broken, and nothing is drawn of a hole whose depth is not known', () => {
  const { container } = render(
    <Profile
      title="Shed"
      units="mm"
      frost={null}
      lines={[[hole('1', 0, { groundMeasured: false, topMeasured: false, bottom: null })]]}
    />,
  );
  const picture = container.querySelector('svg[role=img]')!;
  expect(picture.querySelectorAll('.profile-assumed')).toHaveLength(1);
  expect(picture.querySelectorAll('.profile-post.profile-planned')).toHaveLength(1);
  expect(
    picture.querySelectorAll('.profile-hole, .profile-gravel, .profile-frost, rect.profile-concrete'),
  ).toHaveLength(0);
});

test('nothing is drawn of nothing', () => {
  const { container } = render(<Profile title="Shed" units="mm" frost={0.9} lines={[]} />);
  expect(container.querySelector('svg')).toBeNull();
});

describe('its layout', () => {
  const ring = Array.from({ length: 8 }, (_, i) => hole(String(i + 1), 2.3 * i));

  it('is to one scale, up as along, with every hole in one strip and all within the width', () => {
    const layout = layOutProfile({ lines: [ring], frost: 0.9 }, 358)!;
    expect(layout.strips.flatMap(({ holes }) => holes.map(({ label }) => label)).join('')).toBe('12345678');
    for (const { holes, xOf } of layout.strips) {
      holes.forEach((one, i) => {
        expect(xOf(one)).toBeLessThanOrEqual(358);
        const next = holes[i + 1];
        if (next) expect(xOf(next) - xOf(one)).toBeCloseTo((next.at - one.at) * layout.pxPerMetre, 9);
      });
    }
    expect(layout.yOf(-1.3) - layout.yOf(0.6)).toBeCloseTo(1.9 * layout.pxPerMetre, 9);
  });

  it('is one strip where there is room', () => {
    expect(layOutProfile({ lines: [ring], frost: null }, 1200)!.strips).toHaveLength(1);
  });

  it('of holes on one spot is finite', () => {
    const heap = [
      hole('1', 0, { top: 0, ground: 0, bottom: null }),
      hole('2', 0, { top: 0, ground: 0, bottom: null }),
    ];
    const layout = layOutProfile({ lines: [heap], frost: null }, 358)!;
    expect([layout.pxPerMetre, layout.stripHeight, layout.yOf(0)].every(Number.isFinite)).toBe(true);
  });
});
