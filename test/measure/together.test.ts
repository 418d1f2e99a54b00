import { describe, expect, it } from 'vitest';
import { situate } from '../../src/judge/situation.ts';
import { postsTogether } from '../../src/measure/index.ts';
import { Field, post, ringPlan, stake } from '../judge/field.ts';

const A = stake('A');
const B = stake('B');

/** Two posts, each pulled from A and B, with one pull between them. */
function field(between = true): Field {
  const book = new Field(ringPlan()).site();
  book.pull(A, B);
  for (const hole of ['1', '2']) book.set(hole).pullsTo(post(hole), [A, B]);
  if (between) book.pull(post('1'), post('2'));
  return book;
}

const together = (book: Field) => {
  const { plan, laid } = book;
  return postsTogether(book.log, laid.holes, laid.baseline, plan.instruments, laid.references);
};
const spot = (hole: string, height = 0) => ({ hole, height });
const X = { x: 1, y: 0 };
const Y = { x: 0, y: 1 };

describe('posts together', () => {
  it('have the places and the variances that measuring gives each by itself', () => {
    const book = field();
    const posts = together(book);
    for (const hole of ['1', '2']) {
      const { fix } = situate(book.log).measured!.points.find(
        ({ thing, current }) => current && thing.kind === 'post' && thing.hole === hole,
      )!;
      expect(posts.at(spot(hole))).toEqual(fix!.place);
      expect(posts.variance([{ spot: spot(hole), by: X }])).toBeCloseTo(fix!.covariance.xx, 15);
      expect(posts.variance([{ spot: spot(hole), by: Y }])).toBeCloseTo(fix!.covariance.yy, 15);
      const both = posts.variance([{ spot: spot(hole), by: { x: 1, y: 1 } }]);
      const { xx, xy, yy } = fix!.covariance;
      expect(both).toBeCloseTo(xx + 2 * xy + yy, 15);
    }
  });

  it('know what lies between two of them better than the two by themselves', () => {
    const apart = (book: Field) => {
      const posts = together(book);
      const [p, q] = [posts.at(spot('1'))!, posts.at(spot('2'))!];
      const long = Math.hypot(q.x - p.x, q.y - p.y);
      const u = { x: (q.x - p.x) / long, y: (q.y - p.y) / long };
      return posts.variance([
        { spot: spot('1'), by: { x: -u.x, y: -u.y } },
        { spot: spot('2'), by: u },
      ]);
    };
    const pulled = apart(field());
    // One pull of 2 mm between them, and what A and B add to it: no more than the pull by itself.
    expect(Math.sqrt(pulled)).toBeLessThan(0.002);
    expect(pulled).toBeLessThan(apart(field(false)) / 2);
  });

  it('say nothing of a post that nothing fixes', () => {
    const book = field().set('3');
    book.pull(A, post('3'));
    const posts = together(book);
    expect(posts.at(spot('3'))).toBeNull();
    expect(posts.at(spot('no such post'))).toBeNull();
    expect(() => posts.variance([{ spot: spot('3'), by: X }])).toThrow(RangeError);
  });

  it('stand further out by their lean, the higher the surer of it one must be', () => {
    const book = field();
    for (const side of ['front', 'left', 'back', 'right'] as const)
      book.plumb('1', side, side === 'front' ? 4 : side === 'back' ? -4 : 0);
    const posts = together(book);
    const [low, high] = [posts.at(spot('1'))!, posts.at(spot('1', 2))!];
    // 4 mm in a metre, 2 m up: 8 mm past the outer face.
    expect(Math.hypot(high.x - low.x, high.y - low.y)).toBeCloseTo(0.008, 5);
    const sigma = (height: number) => Math.sqrt(posts.variance([{ spot: spot('1', height), by: X }]));
    expect(sigma(2)).toBeGreaterThan(sigma(0));
  });

  it('are none of an empty log', () => {
    const { laid, plan } = field();
    expect(postsTogether([], laid.holes, laid.baseline, plan.instruments).at(spot('1'))).toBeNull();
  });
});
