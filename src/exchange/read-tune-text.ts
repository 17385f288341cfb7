import { familyNamed, type ReadChannel, type ReadFilter, type ReadTune } from './read-tune';

/** "left tweeter (id)": everything up to the last bracket that numbers follow is the id. */
const NAME = String.raw`(?<name>.*?) \((?<id>.*)\)`;
const NUMBER = String.raw`[+-]?\d+(?:\.\d+)?`;
const gap = (name: string) => ` +(?<${name}>${NUMBER})`;
/** A line of the first table: steps, ms, four more units, what is left over, gain, poles, flags. */
const SETTING = new RegExp(
  `^${NAME}${gap('steps')}${gap('set')}${` +${NUMBER}`.repeat(4)}${gap('left')}` +
    ` +${NUMBER}${gap('gain')} +(?<poles>normal|SWAPPED)(?<flags>(?: +[A-Z ]+)?)$`,
);
const filter = (name: string) =>
  String.raw` {2,}(?<${name}>none|(?:[A-Z][A-Za-z]+(?:-[A-Z][a-z]+)?) order \d+ at ${NUMBER} Hz)`;
/** A line of the second table: the name alone, in the same order. */
const FILTERS = new RegExp(`^(?<name>.*?)${filter('high')}${filter('low')}$`);

/**
 * Reads a tune `toText` wrote, to the digits it shows: delays to half a microsecond and a tenth of
 * one left over, gains to a hundredth of a decibel. Ids come back as shown, on one line.
 * @returns the channels, or one sentence naming the line and what is wrong there
 */
export function readTuneText(text: string): ReadTune {
  const lines = text.split(/\r\n|\r|\n/);
  const first = lines.findIndex((line) => /^speaker +steps +set ms /.test(line));
  if (first < 0)
    return { ok: false, message: 'there is no line that begins with "speaker  steps  set ms"' };
  const second = lines.findIndex((line) => /^speaker +high-pass +low-pass$/.test(line));
  if (second < 0) return { ok: false, message: 'there is no line "speaker  high-pass  low-pass"' };
  const channels: ReadChannel[] = [];
  const names: (string | undefined)[] = [];
  for (const { groups, at } of rowsAfter(lines, first, SETTING)) {
    if (!groups) return { ok: false, message: `line ${at}: no channel with its numbers` };
    names.push(groups.name);
    const { id = '', set, left, gain, poles, flags = '' } = groups;
    const roundedMs = Number(set);
    channels.push({
      speaker: id,
      delayMs: roundedMs - Number(left),
      roundedMs,
      gainDb: Number(gain),
      clamped: flags.includes('CLAMPED'),
      inverted: poles === 'SWAPPED',
      highPass: null,
      lowPass: null,
    });
  }
  let n = 0;
  for (const { groups, at } of rowsAfter(lines, second, FILTERS)) {
    const channel = channels[n++];
    if (!groups || !channel || names[n - 1] !== groups.name)
      return {
        ok: false,
        message: `line ${at}: no channel with its filters, or not in the same order`,
      };
    const [highPass, lowPass] = [filterOf(groups.high), filterOf(groups.low)];
    if (highPass === undefined || lowPass === undefined)
      return { ok: false, message: `line ${at}: a filter of a kind that is not known` };
    Object.assign(channel, { highPass, lowPass });
  }
  if (n !== channels.length)
    return { ok: false, message: `${channels.length} channels, but filters for ${n}` };
  return { ok: true, channels };
}

/** Up to the next empty line. */
function rowsAfter(lines: readonly string[], heading: number, form: RegExp) {
  const end = lines.indexOf('', heading);
  return lines
    .slice(heading + 1, end < 0 ? lines.length : end)
    .map((line, i) => ({ groups: form.exec(line)?.groups, at: heading + i + 2 }));
}

function filterOf(words = ''): ReadFilter | null | undefined {
  const [, name = '', order, hz] = /^(.*) order (\d+) at ([\d.]+) Hz$/.exec(words) ?? [];
  if (words === 'none') return null;
  const family = familyNamed(name);
  return family ? { family, order: Number(order), frequencyHz: Number(hz) } : undefined;
}
