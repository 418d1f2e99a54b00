import type { Length } from '../job/length.ts';
import type { Holds, Plan } from '../job/plan-schema.ts';
import { isMetric, type Units } from '../units/index.ts';
import { FIELDS } from './fields.ts';
import { ownLength, sectionsFor } from './sections.ts';

/** A value that a new plan starts with, and where it comes from. */
export interface Default {
  /** Path in the plan, such as `tolerances.position`. */
  readonly path: string;
  /** Label of the field. */
  readonly field: string;
  readonly value: Length | number | null;
  /** One sentence. */
  readonly from: string;
}

interface LengthRow {
  readonly field: string;
  readonly inch: string;
  readonly metric: string;
  readonly from: string;
  /** The same in metres, where the source counts in feet. */
  readonly fromMetric?: string;
}

const OURS = 'Our choice; change it to what your drawing says.';
const HANDBOOK =
  'Ballast, Handbook of Construction Tolerances, as quoted in the Journal of Light Construction';

/** Lengths, in inches and rounded in metric. Each is a start, and each says whose it is. */
const LENGTHS = {
  'shape.size': { field: FIELDS.size, inch: '8′ 0″', metric: '2.4 m', from: OURS },
  'each.top': { field: FIELDS.top, inch: '2′ 0″', metric: '600 mm', from: OURS },
  'each.holeDiameter': {
    field: FIELDS.holeDiameter,
    inch: '1′ 4″',
    metric: '400 mm',
    from: 'About three times the post’s width, which leaves room to move it (common practice).',
  },
  'pier.diameter': { field: FIELDS.diameter, inch: '1′ 0″', metric: '300 mm', from: OURS },
  'pier.top': { field: FIELDS.top, inch: '2′ 0″', metric: '600 mm', from: OURS },
  'pier.holeDiameter': {
    field: FIELDS.holeDiameter,
    inch: '1′ 6″',
    metric: '450 mm',
    // ACI 318-19, table 20.5.1.3.1, from memory.
    from: 'The pier and 3″ all round it, the cover of concrete cast against earth (ACI 318).',
    fromMetric: 'The pier and 75 mm all round it, the cover of concrete cast against earth (ACI 318).',
  },
  'rules.gravel': {
    field: FIELDS.gravel,
    inch: '6″',
    metric: '150 mm',
    from: 'Common practice; your drawing or code decides.',
  },
  'rules.embedment': {
    field: FIELDS.embedment,
    inch: '1′ 0″',
    metric: '305 mm',
    from: 'The least depth of an exterior footing (IRC R403.1.4); your drawing or code may ask for much more.',
  },
  'tolerances.position': {
    field: FIELDS.position,
    inch: '1/4″',
    metric: '6 mm',
    from: `±1/4″ for layouts of 10 to 100 feet: ${HANDBOOK}.`,
    fromMetric: `For layouts of 3 m to 30 m, rounded down from inches: ${HANDBOOK}.`,
  },
  'tolerances.spacing': {
    field: FIELDS.spacing,
    inch: '1/4″',
    metric: '6 mm',
    from: `±1/4″ for layouts of 10 to 100 feet: ${HANDBOOK}.`,
    fromMetric: `For layouts of 3 m to 30 m, rounded down from inches: ${HANDBOOK}.`,
  },
  'tolerances.level': {
    field: FIELDS.level,
    inch: '1/4″',
    metric: '6 mm',
    from: `1/4″ in 10 feet for the level of a foundation: ${HANDBOOK}.`,
    fromMetric: `6 mm in 3 m for the level of a foundation, rounded down from inches: ${HANDBOOK}.`,
  },
  'instruments.tapeLength': {
    field: FIELDS.tapeLength,
    inch: '100′ 0″',
    metric: '30 m',
    from: 'The usual long tape (common practice).',
  },
  'instruments.tapeError': {
    field: FIELDS.tapeError,
    inch: '1/16″',
    metric: '1.5 mm',
    from: 'Our choice: two of three careful pulls of the same length lie this close to the truth.',
  },
  'instruments.rodError': {
    field: FIELDS.rodError,
    inch: '1/16″',
    metric: '1.5 mm',
    from: 'Our choice: two of three careful readings lie this close to the truth.',
  },
} satisfies Record<string, LengthRow>;
type LengthPath = keyof typeof LENGTHS;

/** Plain numbers: counts and ratios. */
const NUMBERS = {
  'shape.count': { field: FIELDS.count, value: 8, from: OURS },
  'tolerances.plumb': {
    field: FIELDS.plumb,
    // 1/4 in in 10 ft: 2.08 mm in a metre.
    value: 0.25 / 120,
    from: `1/4″ in 10 feet, the figure most used for rough framing: ${HANDBOOK}.`,
    fromMetric: `2.08 mm in a metre, the figure most used for rough framing: ${HANDBOOK}.`,
  },
  'instruments.tapeErrorPerMetre': {
    field: FIELDS.tapeErrorPerMetre,
    // Class II may be 0.2 mm wrong in each metre (from memory); spread evenly up to that limit, one sigma is 0.2 / sqrt(3).
    value: 0.0001,
    from: 'One sigma of a tape of accuracy class II, which may be 0.2 mm wrong in each metre.',
  },
  'instruments.plumbError': {
    field: FIELDS.plumbError,
    value: 0.0005,
    from: 'What is printed on many spirit levels, half a millimetre in a metre (common practice).',
  },
} as const;

const NOT_KNOWN: Default = {
  path: 'rules.frostDepth',
  field: FIELDS.frostDepth,
  value: null,
  from: 'Nobody can guess it: ask the local building office, and type what they say.',
};

/** Every default of a new plan in these units, with its source, for the screens to show beside the field. */
export function defaultsFor(units: Units): Default[] {
  const sourced = <Row extends { readonly from: string; readonly fromMetric?: string }>(row: Row) =>
    (isMetric(units) ? row.fromMetric : undefined) ?? row.from;
  const lengths = Object.entries<LengthRow>(LENGTHS).map(([path, row]) => ({
    path,
    field: row.field,
    value: defaultLength(path as LengthPath, units),
    from: sourced(row),
  }));
  const numbers = Object.entries(NUMBERS).map(([path, row]) => ({
    path,
    field: row.field,
    value: row.value,
    from: sourced(row),
  }));
  return [...lengths, ...numbers, NOT_KNOWN];
}

function defaultLength(path: LengthPath, units: Units): Length {
  return ownLength(LENGTHS[path][isMetric(units) ? 'metric' : 'inch'], units);
}

const DEFAULT_NOMINAL = { inch: '6×6', metric: '140×140' } as const;

/** A plan to start from: eight posts on a ring. Fits the schema; its frost depth is not known yet. */
export function defaultPlan(units: Units): Plan {
  const l = (path: LengthPath) => defaultLength(path, units);
  return {
    name: 'New job',
    units,
    shape: {
      kind: 'ring',
      count: NUMBERS['shape.count'].value,
      sizeBy: 'radius',
      size: l('shape.size'),
      front: 'post',
      pier: false,
    },
    each: { holds: defaultPost(units), top: l('each.top'), holeDiameter: l('each.holeDiameter') },
    pier: {
      holds: { kind: 'pier', diameter: l('pier.diameter') },
      top: l('pier.top'),
      holeDiameter: l('pier.holeDiameter'),
    },
    overrides: {},
    rules: { frostDepth: null, gravel: l('rules.gravel'), embedment: l('rules.embedment') },
    tolerances: {
      position: l('tolerances.position'),
      spacing: l('tolerances.spacing'),
      plumb: NUMBERS['tolerances.plumb'].value,
      level: l('tolerances.level'),
    },
    instruments: {
      tapeLength: l('instruments.tapeLength'),
      tapeError: l('instruments.tapeError'),
      tapeErrorPerMetre: NUMBERS['instruments.tapeErrorPerMetre'].value,
      plumbError: NUMBERS['instruments.plumbError'].value,
      rodError: l('instruments.rodError'),
    },
  };
}

function defaultPost(units: Units): Holds {
  const wanted = DEFAULT_NOMINAL[isMetric(units) ? 'metric' : 'inch'];
  const section = sectionsFor(units).find(({ nominal }) => nominal === wanted);
  if (!section) throw new RangeError(`No section is called ${wanted}`);
  return {
    kind: 'post',
    nominal: section.nominal,
    width: section.width,
    depth: section.depth,
    turned: 'centre',
  };
}
