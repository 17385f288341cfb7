/** Where a text stops being JSON, and why, in one sentence. */
import type { Refusal } from '../../geometry';
import { jsonPath, type PathStep } from './json-path';

class Stop extends Error {}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: exactly those JSON does not allow.
const STRING = /"(?:[^"\\\u0000-\u001f]+|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const LONGEST_WORD = 30;
const LAST_WORD = /^[-+.\w]{1,20}$/;
const WORD = /[-+]?[A-Za-z_][\w]*/y;

/**
 * Walks a text JSON.parse has refused, as RFC 8259 reads it, and says where it went wrong. The text
 * is at most MAX_DEPTH deep, so recursion is safe.
 */
export function locateJsonError(text: string): Refusal {
  let at = 0;
  const path: PathStep[] = [];

  const fail = (what: string): never => {
    throw new Stop(what);
  };
  const space = () => {
    while (/[ \t\r\n]/.test(text[at] ?? '')) at++;
  };
  const take = (pattern: RegExp): string | null => {
    pattern.lastIndex = at;
    const found = pattern.exec(text)?.[0];
    if (found === undefined) return null;
    at += found.length;
    return found;
  };
  const unexpected = (wanted: string): never => {
    // Also in the middle of a number or a word, but a file of one word is no plan at all.
    if (at >= text.length || (at > 0 && LAST_WORD.test(text.slice(at, at + LONGEST_WORD)))) {
      return fail('the file ends here, in the middle: it was cut short');
    }
    const word = take(WORD);
    if (word) return fail(`${word} is not a JSON value (${wanted} expected)`);
    return fail(`${wanted} expected ${position(text, at)}, got ${JSON.stringify(text[at])}`);
  };

  const string = (wanted: string): string => {
    if (text[at] !== '"') return unexpected(wanted);
    const found = take(STRING);
    if (found !== null) return JSON.parse(found) as string;
    const closed = /"(?:[^"\\]+|\\.)*"/sy;
    closed.lastIndex = at;
    return closed.test(text)
      ? fail(`a text ${position(text, at)} holds a character JSON does not allow`)
      : fail('the file ends here, in the middle of a text: it was cut short');
  };

  const list = (close: string, item: (index: number) => void): void => {
    at++;
    space();
    if (text[at] === close) {
      at++;
      return;
    }
    for (let index = 0; ; index++) {
      item(index);
      space();
      if (text[at] === ',') {
        at++;
        space();
        continue;
      }
      if (text[at] === close) {
        at++;
        return;
      }
      unexpected(`a comma or ${close}`);
    }
  };

  const value = (): void => {
    space();
    const c = text[at];
    if (c === '{') {
      list('}', () => {
        const key = string('a field name in double quotes');
        path.push(key);
        space();
        if (text[at] !== ':') unexpected('a colon');
        at++;
        value();
        path.pop();
      });
    } else if (c === '[') {
      list(']', (index) => {
        path.push(index);
        value();
        path.pop();
      });
    } else if (c === '"') string('a text');
    else {
      for (const word of ['true', 'false', 'null']) {
        if (text.startsWith(word, at)) {
          at += word.length;
          return;
        }
      }
      if (take(NUMBER) === null) unexpected('a value');
    }
  };

  try {
    value();
    space();
    if (at < text.length) fail(`there is more after the end of the plan, ${position(text, at)}`);
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    return { path: jsonPath(path), message: error.message };
  }
  return { path: '', message: 'the file is not JSON' };
}

function position(text: string, at: number): string {
  const before = text.slice(0, at).split('\n');
  return `at line ${before.length}, column ${(before.at(-1)?.length ?? 0) + 1}`;
}
