import { describe, expect, it } from 'vitest';
import { post } from './field.ts';
import { itemOf, reds } from './gate-items.ts';
import { gate } from './pour-book.ts';

describe('what a person ticks at the pour gate', () => {
  it('a later round of the whole site renews a stale tick of the hole', () => {
    const renewed = gate({
      after: (f) => {
        f.dig('1', 1030).tick('clean').tick('gravel').tick('room').tick('inspection');
      },
    });
    expect(reds(renewed)).toEqual([]);
  });
  it('asks for the look at the bottom anew with other words, and not for nudging the post', () => {
    const asked = itemOf(gate({ skip: ['clean still'] }), 'clean');
    expect(asked).toEqual({
      item: 'clean',
      green: false,
      stale: true,
      text: 'Hole 1 was ticked clean before post 1 was set: see that no soil or water has come in since, and tick it again.',
    });
    const nudged = gate({
      after: (f) => {
        f.add({ kind: 'stand', thing: post('1'), event: 'nudged' });
      },
    });
    expect(itemOf(nudged, 'clean')).toMatchObject({ green: true });
  });
  it('counts the weather at the pour, whatever is written the day after', () => {
    const poured = gate({
      after: (f) => {
        f.add({ kind: 'pour', hole: '1', bags: 3 });
        f.wait(24).tick('weather').wait(24);
        f.add({ kind: 'note', text: 'covered' });
      },
    });
    expect(itemOf(poured, 'weather')).toMatchObject({ green: true });
    const late = gate({
      after: (f) => {
        f.wait(24).add({ kind: 'pour', hole: '1', bags: 3 });
        f.tick('weather');
      },
    });
    expect(itemOf(late, 'weather')).toMatchObject({ green: false, stale: true });
  });
  it('takes a tick of now for one of now, though an earlier entry came from a clock that was ahead', () => {
    const ahead = gate({
      before: (f) => {
        f.wait(48).add({ kind: 'note', text: 'written by a clock two days ahead' });
        f.wait(-48);
      },
    });
    expect(itemOf(ahead, 'weather')).toMatchObject({ green: true });
  });
  it('a struck tick no longer counts', () => {
    const struck = gate({
      skip: ['braced'],
      after: (f) => {
        f.tick('braced', '1').strike(f.log.at(-1)!.id);
      },
    });
    expect(reds(struck)).toEqual(['braced']);
  });
});
