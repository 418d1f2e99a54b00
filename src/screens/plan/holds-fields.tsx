import type { Holds } from '../../job/plan-schema.ts';
import { FIELDS, sectionsFor } from '../../plan/index.ts';
import { type Choice, ChoiceField, LengthField } from '../../ui/index.ts';
import type { Units } from '../../units/index.ts';
import { fromDefault } from './default-hint.ts';
import { asPier, asPost, TYPED, withNominal } from './holds-edits.ts';
import { actualSize } from './plan-text.ts';

export interface HoldsFieldsProps {
  readonly holds: Holds;
  readonly units: Units;
  /** How posts are turned here until someone says otherwise. */
  readonly turned: 'centre' | 'grid';
  readonly onChange: (holds: Holds) => void;
}

type Post = Extract<Holds, { kind: 'post' }>;

const KINDS: readonly Choice<Holds['kind']>[] = [
  { value: 'post', label: 'A post' },
  { value: 'pier', label: 'A round pier' },
];

const TURNS: readonly Choice<Post['turned']>[] = [
  { value: 'centre', label: 'To the centre', hint: 'a face looks away from it' },
  { value: 'grid', label: 'To the grid', hint: 'a face looks to the front' },
];

/** What a hole holds: a post by its trade name, with what it really measures, or a round pier. */
export function HoldsFields({ holds, units, turned, onChange }: HoldsFieldsProps) {
  return (
    <>
      <ChoiceField
        label="It holds"
        value={holds.kind}
        choices={KINDS}
        onChange={(kind) => onChange(kind === 'post' ? asPost(holds, units, turned) : asPier(holds, units))}
      />
      {holds.kind === 'post' ? (
        <PostFields post={holds} units={units} onChange={onChange} />
      ) : (
        <LengthField
          label={FIELDS.diameter}
          value={holds.diameter}
          units={units}
          {...fromDefault('pier.diameter', holds.diameter, units)}
          onChange={(diameter) => onChange({ ...holds, diameter })}
        />
      )}
    </>
  );
}

interface PostFieldsProps {
  readonly post: Post;
  readonly units: Units;
  readonly onChange: (holds: Holds) => void;
}

function PostFields({ post, units, onChange }: PostFieldsProps) {
  const sections = sectionsFor(units);
  const named = sections.find(({ nominal }) => nominal === post.nominal);
  return (
    <>
      <ChoiceField
        label="Sold as"
        hint="Below the name: what it really measures."
        value={post.nominal}
        choices={nominalChoices(post, units)}
        {...(named ? { from: named.from.replace(/\.$/, '') } : {})}
        onChange={(nominal) => onChange(withNominal(post, nominal, units))}
      />
      {post.nominal === TYPED && (
        <>
          <LengthField
            label={FIELDS.width}
            hint="Along the front face."
            value={post.width}
            units={units}
            onChange={(width) => onChange({ ...post, width })}
          />
          <LengthField
            label={FIELDS.depth}
            hint="Square to the front face."
            value={post.depth}
            units={units}
            onChange={(depth) => onChange({ ...post, depth })}
          />
        </>
      )}
      <ChoiceField
        label="Turned"
        value={post.turned}
        choices={TURNS}
        onChange={(turned) => onChange({ ...post, turned })}
      />
    </>
  );
}

/** A post of a name from other units stays among the choices, so that what is chosen is always seen. */
function nominalChoices(post: Post, units: Units): Choice<string>[] {
  const sections = sectionsFor(units);
  const foreign = post.nominal !== TYPED && !sections.some(({ nominal }) => nominal === post.nominal);
  const all = foreign ? [post, ...sections] : sections;
  return [
    ...all.map((section) => ({
      value: section.nominal,
      label: section.nominal,
      hint: actualSize(section, units),
    })),
    { value: TYPED, label: 'Another size', hint: 'measure it, and type it' },
  ];
}
