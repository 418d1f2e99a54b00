import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from '../../src/desk/ready.mjs';
import { faultsOf, readSources } from './layers.ts';

const faults = (path: string, text: string) => faultsOf([{ path, text }]);

describe('imports', () => {
  it.each([
    ['a value', "import { log } from '../judge/assess.ts';"],
    ['a type', "import type { Verdict } from '../judge/types.ts';"],
    ['a name passed on', "export { assess } from '../judge/assess.ts';"],
    ['everything passed on', "export * from '../judge/assess.ts';"],
    ['a late import', "export const load = () => import('../judge/assess.ts');"],
    ['a type named in place', "export type V = import('../judge/types.ts').Verdict;"],
  ])('upwards are found: %s', (_what, text) => {
    expect(faults('plan/ring.ts', text).join()).toContain('"plan" may not use "judge"');
  });

  it.each([
    ['plan/ring.ts', "import { at } from '../geometry/point.ts';"],
    ['plan/ring.ts', "import { x } from './hole.ts';"],
    ['plan/shapes/ring.ts', "import { x } from '../hole.ts';"],
    ['screens/dig/dig.tsx', "import { x } from '../../judge/assess.ts'; import './dig.css';"],
    ['main.tsx', "import { App } from './screens/app.tsx';"],
    ['desk/assess.ts', "import { readBackup } from '../store/backup.ts'; import { join } from 'node:path';"],
  ])('downwards and sideways are fine: %s, %s', (path, text) => {
    expect(faults(path, text)).toEqual([]);
  });

  it.each([
    ['geometry/point.ts', '../units/units.ts', '"geometry" may not use "units"'],
    ['ui/keypad.tsx', '../screens/route.ts', '"ui" may not use "screens"'],
    ['screens/app.tsx', '../main.tsx', '"screens" may not use "main"'],
    ['screens/app.tsx', '../desk/serve.mjs', '"screens" may not use "desk"'],
    ['desk/assess.ts', '../screens/route.ts', '"desk" may not use "screens"'],
    ['main.tsx', './desk/serve.mjs', '"main" may not use "desk"'],
    ['units/units.ts', '../../test/units/lengths.ts', '"units" may not use'],
    ['newcomer/thing.ts', '../units/units.ts', '"newcomer" may not use "units"'],
  ])('from %s to %s are found', (path, to, fault) => {
    expect(faults(path, `import { x } from '${to}';`).join()).toContain(fault);
  });

  it.each([
    ['judge/assess.ts', 'preact'],
    ['judge/assess.ts', 'preact/hooks'],
    ['measure/adjust.ts', 'dexie'],
    ['ui/keypad.tsx', 'dexie'],
    ['store/db.ts', 'node:fs'],
  ])('of a package out of place are found: %s, %s', (path, to) => {
    expect(faults(path, `import { x } from '${to}';`)).toHaveLength(1);
  });

  it('in a circle are found, once, types apart', () => {
    const a = { path: 'plan/a.ts', text: "import { b } from './b.ts';" };
    const b = { path: 'plan/b.ts', text: "import { c } from './c.ts';" };
    const c = { path: 'plan/c.ts', text: "import { a } from './a.ts';" };
    expect(faultsOf([b, a, c])).toEqual([
      'These files import each other in a circle: plan/a.ts → plan/b.ts → plan/c.ts → plan/a.ts.',
    ]);
    expect(faultsOf([a, b, { ...c, text: "import type { A } from './a.ts';" }])).toEqual([]);
  });
});

describe('the middle', () => {
  it.each([
    ['Date.now', 'export const t = () => Date.now();'],
    ['new Date()', 'export const t = () => new Date();'],
    ['Date()', 'export const t = () => Date();'],
    ['Math.random', 'export const r = () => Math.random();'],
    ['window', 'export const w = () => window.innerWidth;'],
    ['document', 'export const d = () => document.title;'],
    ['localStorage', "export const s = () => localStorage.getItem('x');"],
    ['fetch', "export const f = () => fetch('x');"],
    ['crypto', 'export const id = () => crypto.randomUUID();'],
    ['document', 'export const d = [...document.forms];'],
  ])('may not use %s: %s', (name, text) => {
    expect(faults('measure/adjust.ts', text).join()).toContain(`uses ${name}:`);
    expect(faults('ui/keypad.tsx', text)).toEqual([]);
  });

  it.each([
    'export const t = (at: string) => new Date(at).getTime();',
    'export const p = (pull: { self: string }) => pull.self;',
    'export interface P { readonly location: string; readonly document?: string }',
    'export const twice = (self: number) => self + self;',
    'export function at([{ top: location = 0 }]: { top?: number }[]) { return location; }',
    'const location = { x: 0 }; export const x = location.x;',
    "// window.innerWidth\nexport const text = 'document';",
  ])('may have the like that reaches nothing: %s', (text) => {
    expect(faults('measure/adjust.ts', text)).toEqual([]);
  });
});

it('the files of src lie in order', () => {
  const files = readSources(join(ROOT, 'src'));
  expect(files.length).toBeGreaterThan(10);
  expect(faultsOf(files)).toEqual([]);
});
