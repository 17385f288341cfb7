import { gzipSync } from 'node:zlib';
import { build, type Rolldown } from 'vite';

export interface PageSize {
  /** Page, styles and scripts that stand before the numbers and tables show, KiB gzip. */
  before3d: number;
  /** All that the first start loads, the details and the drawing included, KiB gzip. */
  firstStart: number;
  /** Every script, style and page built, worker and later dialogs included, KiB gzip. */
  everything: number;
}

const kib = (source: string | Uint8Array) => gzipSync(source, { level: 9 }).length / 1024;

/** Builds the page in memory and weighs it. */
export async function pageSize(): Promise<PageSize> {
  const built = await build({ logLevel: 'silent', build: { write: false } });
  const { output } = (Array.isArray(built) ? built[0] : built) as Rolldown.RolldownOutput;
  const files = new Map(output.map((file) => [file.fileName, file]));
  const entry = output.find((file) => file.type === 'chunk' && file.isEntry);
  if (entry?.type !== 'chunk') throw new Error('pageSize: the build has no entry');

  /** A script with what it imports at once, and the styles of all of them. */
  const closure = (name: string, into: Set<string>): Set<string> => {
    const file = files.get(name);
    if (!file || into.has(name)) return into;
    into.add(name);
    if (file.type !== 'chunk') return into;
    for (const other of file.imports) closure(other, into);
    const meta = (file as { viteMetadata?: { importedCss: Set<string> } }).viteMetadata;
    for (const css of meta?.importedCss ?? []) into.add(css);
    return into;
  };
  const first = closure('index.html', closure(entry.fileName, new Set()));
  const start = new Set(first);
  for (const part of ['scene', 'workbench/details']) {
    const chunk = output.find(
      (file) => file.type === 'chunk' && file.facadeModuleId?.includes(`/src/${part}/index.`),
    );
    if (!chunk) throw new Error(`pageSize: ${part} is not a chunk of its own`);
    closure(chunk.fileName, start);
  }
  const weigh = (names: Iterable<string>) =>
    [...names].reduce((sum, name) => {
      const file = files.get(name);
      if (!file || !/\.(html|js|css)$/.test(name)) return sum;
      return sum + kib(file.type === 'chunk' ? file.code : file.source);
    }, 0);
  return { before3d: weigh(first), firstStart: weigh(start), everything: weigh(files.keys()) };
}
