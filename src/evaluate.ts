/**
 * The engine without a browser: `npm run --silent evaluate -- [--studies] FILE...` prints one line
 * of JSON per plan file, `{"file","options"}` or `{"file","error":{"message","path"}}`, in the order
 * given; with `--studies` each option also holds `study`: levels, crossovers, image and sensitivity
 * at every seat, and the compromise over several. Exit status 1 when any file failed, 2 when none
 * was named. It writes no file.
 */
import { readFile } from 'node:fs/promises';
import { pathToFileURL } from 'node:url';
import {
  evaluatePlan,
  type OptionResult,
  type OptionStudy,
  type Refusal,
  studyOption,
} from './geometry';
import { formatRefusal, readPlan } from './plan/schema';

export type EvaluatedFile =
  | { file: string; options: (OptionResult & { study?: OptionStudy })[]; warnings?: string[] }
  | { file: string; error: Refusal };

/** The one flag there is. */
const STUDIES = '--studies';

/** Reads and evaluates one plan file. Never throws for what a file may hold. */
export async function evaluateFile(file: string, studies = false): Promise<EvaluatedFile> {
  let bytes: Uint8Array;
  try {
    bytes = await readFile(file);
  } catch (reason) {
    return { file, error: { message: `the file cannot be read: ${sayWhy(reason)}`, path: '' } };
  }
  const read = readPlan(bytes);
  if (!read.ok) return { file, error: wholeSentence(read.error) };
  const answer = evaluatePlan(read.plan);
  if (!answer.ok) return { file, error: wholeSentence(answer.error) };
  const { plan, warnings } = read;
  const { cabin } = answer;
  const options = answer.options.map((result, i) => {
    const option = plan.options[i];
    if (!studies || !option) return result;
    return { ...result, study: studyOption({ plan, cabin, option, result }) };
  });
  return { file, options, ...(warnings.length > 0 && { warnings }) };
}

/** On a command line the sentence stands alone, so it says where as well as what. */
const wholeSentence = (refusal: Refusal): Refusal => ({
  message: formatRefusal(refusal),
  path: refusal.path,
});

function sayWhy(reason: unknown): string {
  const code = (reason as NodeJS.ErrnoException | null)?.code;
  if (code === 'ENOENT') return 'there is no such file';
  if (code === 'EISDIR') return 'it is a folder';
  if (code === 'EACCES') return 'reading it is not allowed';
  return code ?? String(reason);
}

async function main(words: readonly string[]): Promise<number> {
  const files = words.filter((word) => word !== STUDIES);
  if (files.length === 0) {
    process.stderr.write('Name one or more plan files: npm run --silent evaluate -- FILE...\n');
    return 2;
  }
  let status = 0;
  for (const file of files) {
    const evaluated = await evaluateFile(file, words.includes(STUDIES));
    if ('error' in evaluated) status = 1;
    process.stdout.write(`${JSON.stringify(evaluated)}\n`);
  }
  return status;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  process.exitCode = await main(process.argv.slice(2));
