import type { Rows } from '../job/plan-schema.ts';

/** Labels of the plan's fields, as screens show them and as refusals name them. */
export const FIELDS = {
  name: 'Name of the job',
  count: 'Number of posts',
  size: 'Size of the ring',
  columns: 'Columns',
  rows: 'Rows',
  columnSpacing: 'Between columns',
  rowSpacing: 'Between rows',
  wholeWidth: 'Whole width',
  wholeDepth: 'Whole depth',
  points: 'Points',
  width: 'Post width',
  depth: 'Post depth',
  diameter: 'Pier diameter',
  top: 'Height of the top',
  holeDiameter: 'Hole diameter',
  frostDepth: 'Frost depth',
  gravel: 'Gravel',
  embedment: 'Least embedment',
  ownDepth: 'Depth of this hole',
  cover: 'Least concrete beside a post',
  position: 'Position tolerance',
  spacing: 'Spacing tolerance',
  plumb: 'Plumb tolerance',
  level: 'Level tolerance',
  tops: 'Tolerance of tops',
  tapeLength: 'Tape length',
  tapeError: 'Tape error',
  tapeErrorPerMetre: 'Tape error by length',
  plumbError: 'Plumb reading error',
  rodError: 'Rod reading error',
  rodLength: 'Rod length',
  tube: 'Inside of a tube round the posts',
  bell: 'Bell at the foot, across',
  bellHeight: 'Height over which the bell narrows',
  spare: 'Spare on each post, to cut off',
  stock: 'Lengths that posts are sold in',
  bought: 'Length of the posts you have bought',
  levelGround: 'Ground above the benchmark, where not measured',
  twist: 'Tolerance of twist',
  seat: 'Seat of the beams below the tops',
  edge: 'Radius of the edge',
  opening: 'Opening for the pier, across',
  gap: 'Least gap all round the pier',
} as const;

/** What the two sizes of rows and columns are called: spacings, or the whole over the outer faces. */
export const rowsFields = ({ measuredTo }: Pick<Rows, 'measuredTo'>): { columns: string; rows: string } =>
  measuredTo === 'centres'
    ? { columns: FIELDS.columnSpacing, rows: FIELDS.rowSpacing }
    : { columns: FIELDS.wholeWidth, rows: FIELDS.wholeDepth };
