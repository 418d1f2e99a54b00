import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { type ESTree, parseSync, Visitor } from 'vite';

/** From the bottom up: a file may use its own folder and those before it. `main` is the one file that starts the app. */
const ORDER: readonly string[] = [
  'geometry',
  'units',
  'job',
  'plan',
  'measure',
  'stakeout',
  'build',
  'judge',
  'store',
  'ui',
  'screens',
];

/** Pure functions of plain data: the same on a phone, at a desk and in a test. */
const PURE = new Set(ORDER.slice(0, ORDER.indexOf('store')));

/** Packages that a folder may use; of every other folder, none. `desk` runs on Node and may use any. */
const PACKAGES: Readonly<Record<string, readonly string[]>> = {
  ...Object.fromEntries([...PURE].map((folder) => [folder, ['valibot']])),
  store: ['valibot', 'dexie'],
  ui: ['preact'],
  screens: ['preact', 'vite-plugin-pwa'],
  main: ['preact', 'virtual:pwa-register'],
};

/** Names that reach the page, the database, the network or a clock. */
const IMPURE = new Set([
  'window',
  'document',
  'navigator',
  'location',
  'localStorage',
  'sessionStorage',
  'indexedDB',
  'caches',
  'fetch',
  'performance',
  'crypto',
  'globalThis',
  'self',
  'process',
  'setTimeout',
  'setInterval',
]);

interface Import {
  readonly to: string;
  /** Gone after compiling: it makes no circle at run time. */
  readonly typeOnly: boolean;
}

export interface SourceFile {
  /** Path below src, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

/** Every source file below `folder`, styles and pages apart. */
export function readSources(folder: string): SourceFile[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|tsx|mjs)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({ path: slashed(relative(folder, path)), text: readFileSync(path, 'utf8') }));
}

/** What is wrong with the files, one sentence each: wrong order, a package out of place, impurity, circles. */
export function faultsOf(files: readonly SourceFile[]): string[] {
  const read = files.map((file) => ({ file, ...contents(file) }));
  const single = read.flatMap(({ file, imports, impure }) => [
    ...imports.flatMap(({ to }) => importFault(file.path, to)),
    ...(PURE.has(folderOf(file.path)) ? impure.map((name) => impureFault(file.path, name)) : []),
  ]);
  const graph = new Map(read.map(({ file, imports }) => [file.path, valueImports(file.path, imports)]));
  return [...single, ...circles(graph)];
}

/** `ring.ts` in `plan/shapes/` belongs to `plan`; `main.tsx` to `main`. */
function folderOf(path: string): string {
  return path.includes('/') ? path.slice(0, path.indexOf('/')) : path.replace(/\..*$/, '');
}

function importFault(path: string, to: string): string[] {
  const from = folderOf(path);
  if (!to.startsWith('.')) return packageFault(path, from, to);
  const target = folderOf(resolved(path, to));
  if (target === from || mayUse(from).has(target)) return [];
  return [`src/${path} imports ${to}: "${from}" may not use "${target}".`];
}

/** The folders that a folder may use besides its own. Desk commands judge as the phone does, and show no screens. */
function mayUse(folder: string): Set<string> {
  if (folder === 'main') return new Set(ORDER);
  if (folder === 'desk') return new Set(ORDER.slice(0, ORDER.indexOf('ui')));
  const place = ORDER.indexOf(folder);
  return new Set(ORDER.slice(0, Math.max(place, 0)));
}

function packageFault(path: string, from: string, to: string): string[] {
  const allowed = PACKAGES[from] ?? [];
  if (from === 'desk' || allowed.some((name) => to === name || to.startsWith(`${name}/`))) return [];
  return [`src/${path} imports "${to}": "${from}" may use ${allowed.join(', ') || 'no package'}.`];
}

const impureFault = (path: string, name: string) =>
  `src/${path} uses ${name}: this folder has no page, database, network, clock or chance.`;

const valueImports = (path: string, imports: readonly Import[]) =>
  imports.filter(({ to, typeOnly }) => to.startsWith('.') && !typeOnly).map(({ to }) => resolved(path, to));

function contents(file: SourceFile): { imports: Import[]; impure: string[] } {
  const { program, errors } = parseSync(file.path, file.text);
  if (errors[0]) throw new SyntaxError(`src/${file.path} cannot be read: ${errors[0].message}`);
  const imports: Import[] = [];
  const impure = new Set<string>();
  const own = new Set<string>();
  const declares = (pattern: ESTree.Node) => {
    for (const name of namesIn(pattern)) own.add(name);
  };
  const used = (node: ESTree.Node | null | undefined, typeOnly: boolean) => {
    if (node?.type === 'Literal' && typeof node.value === 'string')
      imports.push({ to: node.value, typeOnly });
  };
  new Visitor({
    ImportDeclaration: (node) => used(node.source, node.importKind === 'type'),
    ExportNamedDeclaration: (node) => used(node.source, node.exportKind === 'type'),
    ExportAllDeclaration: (node) => used(node.source, node.exportKind === 'type'),
    ImportExpression: (node) => used(node.source, false),
    TSImportType: (node) => used(node.source, true),
    MemberExpression: (node) => {
      const name = file.text.slice(node.start, node.end);
      if (name === 'Date.now' || name === 'Math.random') impure.add(name);
    },
    NewExpression: (node) => {
      if (isNamed(node.callee, 'Date') && node.arguments.length === 0) impure.add('new Date()');
    },
    CallExpression: (node) => {
      if (isNamed(node.callee, 'Date')) impure.add('Date()');
    },
    VariableDeclarator: (node) => declares(node.id),
    ArrowFunctionExpression: (node) => node.params.forEach(declares),
    FunctionDeclaration: (node) => node.params.forEach(declares),
    FunctionExpression: (node) => node.params.forEach(declares),
    Identifier: (node) => {
      if (IMPURE.has(node.name) && !isOnlyAName(file.text, node.start, node.end)) impure.add(node.name);
    },
  }).visit(program);
  // A name that the file declares is its own wherever it stands: exact scopes would be more than this check needs.
  return { imports, impure: [...impure].filter((name) => !own.has(name)) };
}

/** The names that a pattern declares: `x`, `{ x, y: [z] }`, `x = 1`, `...x`. */
function namesIn(pattern: ESTree.Node): string[] {
  switch (pattern.type) {
    case 'Identifier':
      return [pattern.name];
    case 'ObjectPattern':
      return pattern.properties.flatMap((part) => namesIn(part.type === 'RestElement' ? part : part.value));
    case 'ArrayPattern':
      return pattern.elements.flatMap((part) => (part ? namesIn(part) : []));
    case 'AssignmentPattern':
      return namesIn(pattern.left);
    case 'RestElement':
      return namesIn(pattern.argument);
    default:
      return [];
  }
}

const isNamed = (node: ESTree.Node, name: string) => node.type === 'Identifier' && node.name === name;

/** A property's name is no use of the global: `pull.self`, `{ location: 3 }`, `location?: Point`. */
function isOnlyAName(text: string, start: number, end: number): boolean {
  return /(^|[^.])\.\s*$/.test(text.slice(0, start)) || /^\??\s*:/.test(text.slice(end));
}

function resolved(path: string, to: string): string {
  return slashed(join(dirname(path), to.replace(/\?.*$/, '')));
}

const slashed = (path: string) => path.replaceAll('\\', '/');

/** Each circle once, beginning at the file that comes first in the alphabet. */
function circles(graph: ReadonlyMap<string, readonly string[]>): string[] {
  const found = new Set<string>();
  const done = new Set<string>();
  const walk = (path: string, trail: readonly string[]) => {
    const at = trail.indexOf(path);
    if (at >= 0) found.add(inOneLine(trail.slice(at)));
    if (at >= 0 || done.has(path)) return;
    for (const next of graph.get(path) ?? []) walk(next, [...trail, path]);
    done.add(path);
  };
  for (const path of graph.keys()) walk(path, []);
  return [...found];
}

function inOneLine(circle: readonly string[]): string {
  const first = circle.indexOf([...circle].sort()[0] ?? '');
  const turned = [...circle.slice(first), ...circle.slice(0, first), circle[first]];
  return `These files import each other in a circle: ${turned.join(' → ')}.`;
}
