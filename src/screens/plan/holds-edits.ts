import type { Holds } from '../../job/plan-schema.ts';
import { defaultPlan, sectionsFor } from '../../plan/index.ts';
import type { Units } from '../../units/index.ts';

type Post = Extract<Holds, { kind: 'post' }>;

/** Name of a post whose size is typed. */
export const TYPED = 'typed';

/** The post that a new plan starts with, in place of a pier; a post stays as it is. */
export function asPost(holds: Holds, units: Units, turned: Post['turned']): Holds {
  const { holds: usual } = defaultPlan(units).each;
  return holds.kind === 'post' || usual.kind === 'pier' ? holds : { ...usual, turned };
}

/** The pier that a new plan starts with, in place of a post; a pier stays as it is. */
export const asPier = (holds: Holds, units: Units): Holds =>
  holds.kind === 'pier' ? holds : defaultPlan(units).pier.holds;

/** A post by another name, with that name's actual size; a typed one begins at the size that was there. */
export function withNominal(post: Post, nominal: string, units: Units): Post {
  if (nominal === TYPED) return { ...post, nominal };
  const section = sectionsFor(units).find((candidate) => candidate.nominal === nominal);
  return section ? { ...post, nominal, width: section.width, depth: section.depth } : post;
}
