/** Import arrows: which part of the house may know which. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');

interface Import {
  /** The importing file, from the root: "src/plan/read.ts". */
  file: string;
  /** What it names: a package ("three") or a file from the root ("src/geometry/index"). */
  target: string;
}

interface Rule {
  name: string;
  breaks(one: Import): boolean;
}

const within = (...folders: string[]) => {
  const starts = folders.map((folder) => `src/${folder}`);
  return (path: string) =>
    starts.some(
      (start) => path === start || path.startsWith(`${start}/`) || path === `${start}.ts`,
    );
};
const isPackage = (target: string) => !/^(src|tests|vehicle-templates)(\/|$)/.test(target);
const isOneOf = (target: string, ...packages: string[]) =>
  packages.some((name) => target === name || target.startsWith(`${name}/`));

/** The part may use these parts of src and no other. */
const sees = (part: string, ...others: string[]): Rule => ({
  name: `${part} sees only ${[part, ...others].join(', ')}`,
  breaks: ({ file, target }) =>
    within(part)(file) && target.startsWith('src') && !within(part, ...others)(target),
});

const RULES: readonly Rule[] = [
  sees('geometry'),
  sees('plan', 'geometry'),
  sees('store', 'geometry', 'plan', 'exchange', 'worker'),
  sees('exchange', 'geometry', 'plan'),
  sees('worker', 'geometry', 'plan'),
  sees('scene', 'geometry', 'plan', 'store', 'worker'),
  sees('workbench', 'geometry', 'plan', 'store', 'exchange', 'worker'),
  sees('sheets', 'geometry', 'plan', 'store', 'exchange'),
  sees('evaluate', 'geometry', 'plan'),
  sees('search', 'geometry', 'plan'),
  sees('offline.worker'),
  {
    name: 'the engine has one door: outside it only src/geometry is imported',
    breaks: ({ file, target }) =>
      !within('geometry')(file) &&
      file.startsWith('src/') &&
      within('geometry')(target) &&
      !['src/geometry', 'src/geometry/index'].includes(target),
  },
  {
    name: 'the engine stands on no package, but that the compromise over seats takes its linear program from one made for that',
    breaks: ({ file, target }) =>
      within('geometry')(file) &&
      isPackage(target) &&
      !(file === 'src/geometry/study/compromise.ts' && target === 'yalps'),
  },
  {
    name: 'plan, exchange, worker, evaluate and search know no React and no three',
    breaks: ({ file, target }) =>
      within('plan', 'exchange', 'worker', 'evaluate', 'search')(file) &&
      isOneOf(target, 'react', 'react-dom', 'three', 'three-mesh-bvh', '@react-three'),
  },
  {
    name: 'only the scene draws: nobody else outside the engine knows three or fiber',
    breaks: ({ file, target }) =>
      !within('scene', 'geometry')(file) &&
      file.startsWith('src/') &&
      isOneOf(target, 'three', 'three-mesh-bvh', '@react-three'),
  },
  {
    name: 'the store, the engine, plan, exchange and worker are no React components',
    breaks: ({ file }) =>
      within('geometry', 'plan', 'store', 'exchange', 'worker')(file) && file.endsWith('.tsx'),
  },
  {
    name: 'the page needs nothing from its tests and nothing of Node',
    breaks: ({ file, target }) =>
      file.startsWith('src/') &&
      (target.startsWith('tests') ||
        (target.startsWith('node:') && !within('evaluate', 'search')(file))),
  },
];

function sourceFiles(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(ROOT, join(entry.parentPath, entry.name)).split('\\').join('/'));
}

/** Every import of a file: static, type, re-export, dynamic, by address, or inside a type. */
function importsOf(file: string, text: string): Import[] {
  const code = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '$1');
  const named = /(?:\bfrom|\bimport)\s*\(?\s*['"]([^'"]+)['"]/g;
  const address = /new\s+URL\(\s*['"](\.[^'"]+)['"]\s*,\s*import\.meta\.url/g;
  return [...code.matchAll(named), ...code.matchAll(address)].map((match) => {
    const name = match[1] ?? '';
    const target = name.startsWith('.') ? posix.join(posix.dirname(file), name) : name;
    return { file, target: target.replace(/\.(tsx?|js)$/, '') };
  });
}

const files = sourceFiles('src');
const imports = files.flatMap((file) => importsOf(file, readFileSync(join(ROOT, file), 'utf8')));

describe('import arrows', () => {
  test('enough was read for the rules to mean something', () => {
    expect(files.length).toBeGreaterThan(60);
    expect(imports.length).toBeGreaterThan(150);
    for (const part of [
      'geometry',
      'plan',
      'store',
      'exchange',
      'worker',
      'scene',
      'workbench',
      'sheets',
    ])
      expect(files.filter(within(part)).length, `files of ${part}`).toBeGreaterThan(2);
  });

  test.each(RULES)('$name', ({ breaks }) => {
    const broken = imports.filter(breaks).map(({ file, target }) => `${file} imports ${target}`);
    expect(broken).toEqual([]);
  });

  test.each([
    ['src/geometry/stage/pairs.ts', "import { Plan } from '../../plan/types';"],
    ['src/geometry/stage/pairs.ts', "import { Vector3 } from 'three';"],
    ['src/geometry/paths/cast.ts', "import { MeshBVH } from 'three-mesh-bvh';"],
    ['src/geometry/study/sums.ts', "import { solve } from 'yalps';"],
    ['src/geometry/study/compromise.ts', "import { produce } from 'immer';"],
    ['src/plan/read.ts', "export * from '../store';"],
    ['src/plan/read.ts', "import { cross } from '../geometry/vector';"],
    ['src/store/index.ts', "const scene = () => import('../scene');"],
    ['src/scene/board.tsx', "import { Table } from '../workbench';"],
    ['src/workbench/index.tsx', "import '../scene';"],
    ['src/workbench/index.tsx', "import type { Mesh } from 'three';"],
    ['src/sheets/index.tsx', "import { Dialog } from '../workbench/dialog';"],
    ['src/exchange/index.ts', "import { planStore } from '../store';"],
    ['src/worker/client.ts', "new Worker(new URL('../store/x.ts', import.meta.url))"],
    ['src/plan/types.ts', "let a: import('../store').Step;"],
    ['src/plan/read.ts', "import { readFile } from 'node:fs';"],
    ['src/search.ts', "import { planStore } from './store';"],
  ])('a forbidden import is noticed: %s with %s', (file, text) => {
    const found = importsOf(file, text);
    expect(found).toHaveLength(1);
    expect(RULES.filter(({ breaks }) => found.some(breaks))).not.toEqual([]);
  });

  test('comments import nothing', () => {
    expect(importsOf('src/a.ts', "// from 'three'\n/* import 'react' */")).toEqual([]);
  });
});
