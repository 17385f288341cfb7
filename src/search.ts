/**
 * The search without a browser: `npm run --silent search -- PLAN REQUEST` reads a plan file and a
 * request file and prints one JSON object, `{"tried","feasible","front","answers"}` with `"all"`
 * where asked (or, for several pairs together, `{"pairs","tried","answers","complete"}`), or `{"error":{"message","path"}}` and exit status 1; 2 when the two files are not
 * named. It writes no file.
 */
import { readFile } from 'node:fs/promises';
import { pathToFileURL } from 'node:url';
import {
  type Refusal,
  type SearchAnswer,
  type StageAnswer,
  searchSpots,
  searchStage,
} from './geometry';
import { formatRefusal, readPlan, readSearchRequest } from './plan/schema';

export type SearchedFile =
  | ((SearchAnswer | StageAnswer) & { warnings?: string[] })
  | { error: Refusal };

/** Searches by two files. Never throws for what they may hold. */
export async function searchFile(planFile: string, requestFile: string): Promise<SearchedFile> {
  const files: Uint8Array[] = [];
  for (const file of [planFile, requestFile])
    try {
      files.push(await readFile(file));
    } catch (reason) {
      return { error: { message: `${file} cannot be read: ${sayWhy(reason)}`, path: '' } };
    }
  const [planBytes, requestBytes] = files as [Uint8Array, Uint8Array];
  const plan = readPlan(planBytes);
  if (!plan.ok) return refused('in the plan: ', plan.error);
  const read = readSearchRequest(requestBytes);
  if (!read.ok) return refused('in the request: ', read.error);
  const { request } = read;
  const found =
    'pairs' in request ? searchStage(plan.plan, request) : searchSpots(plan.plan, request);
  if (!found.ok) return refused('in the request: ', found.error);
  const warnings = [...plan.warnings, ...read.warnings];
  return { ...found.answer, ...(warnings.length > 0 && { warnings }) };
}

/** On a command line the sentence stands alone, so it says which file and where as well as what. */
const refused = (where: string, refusal: Refusal): { error: Refusal } => ({
  error: { message: where + formatRefusal(refusal), path: refusal.path },
});

function sayWhy(reason: unknown): string {
  const code = (reason as NodeJS.ErrnoException | null)?.code;
  if (code === 'ENOENT') return 'there is no such file';
  if (code === 'EISDIR') return 'it is a folder';
  if (code === 'EACCES') return 'reading it is not allowed';
  return code ?? String(reason);
}

async function main(files: readonly string[]): Promise<number> {
  const [plan, request, ...more] = files;
  if (plan === undefined || request === undefined || more.length > 0) {
    process.stderr.write('Name a plan and a request: npm run --silent search -- PLAN REQUEST\n');
    return 2;
  }
  const found = await searchFile(plan, request);
  process.stdout.write(`${JSON.stringify(found)}\n`);
  return 'error' in found ? 1 : 0;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  process.exitCode = await main(process.argv.slice(2));
