import { unzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import {
  readWav,
  type SignalFilesSettings,
  testSignalFiles,
  zipInSteps,
  zipOf,
} from '../../../src/exchange';
import type { SpeakerInput } from '../../../src/geometry';
import { delaysOf, samplePlan } from '../sample';

const BANDS = [
  [80, 400],
  [80, 400],
  [400, 3000],
] as const;
const set = (
  settings: Partial<SignalFilesSettings> = {},
  change: Partial<SpeakerInput>[] = BANDS.map((bandHz) => ({ bandHz })),
  distances: readonly number[] = [1000, 1400, 1700],
) => {
  const plan = samplePlan(distances, change);
  const [option] = plan.options;
  if (!option) throw new Error('no option');
  const all = delaysOf(plan);
  const made = testSignalFiles(all, option, {
    sampleRateHz: 8000,
    withDelays: false,
    encoding: 'int24',
    ...settings,
  });
  const file = (name: string) => {
    const found = made.files.find((one) => one.name === name);
    if (!found) throw new Error(`no ${name} in ${made.files.map((one) => one.name).join()}`);
    return found;
  };
  const sound = (name: string) => {
    const read = readWav(file(name).write());
    if (!read.ok) throw new Error(read.message);
    return read;
  };
  const notes = new TextDecoder().decode(file('what is what.txt').write());
  return { ...made, all, sound, notes };
};
const loudest = (samples: Float64Array) => {
  const high = Math.max(...samples.map(Math.abs));
  return samples.findIndex((x) => Math.abs(x) === high);
};

describe('the set of test signals', () => {
  test('has clicks and bursts in turn, together and of each channel alone, all read back', () => {
    const { files, sound, silent } = set();
    expect(silent).toEqual([]);
    expect(files.map(({ name }) => name)).toEqual([
      'what is what.txt',
      'clicks in turn.wav',
      'clicks together.wav',
      'bursts in turn.wav',
      'bursts together.wav',
      '01 left mid click.wav',
      '01 left mid burst.wav',
      '02 right mid click.wav',
      '02 right mid burst.wav',
      '03 left mid 2 click.wav',
      '03 left mid 2 burst.wav',
    ]);
    for (const { name } of files.slice(1)) {
      const { channels, sampleRateHz, encoding } = sound(name);
      expect([sampleRateHz, encoding]).toEqual([8000, 'int24']);
      expect(channels).toHaveLength(/^\d/.test(name) ? 1 : 3);
      for (const samples of channels) {
        const high = Math.max(...samples.map(Math.abs));
        expect(Math.abs(20 * Math.log10(high) + 12)).toBeLessThan(0.001);
      }
    }
    expect(sound('clicks in turn.wav').channels.map(loudest)).toEqual([4000, 12000, 20000]);
  });

  test('with the delays as set, what is played early comes late by just that', () => {
    const { sound, all } = set({ withDelays: true });
    const at = sound('bursts together.wav').channels.map(loudest);
    for (const [i, row] of all.rows.entries())
      expect(Math.abs((at[i] ?? 0) - 4000 - row.rounded.ms * 8)).toBeLessThanOrEqual(0.5);
    expect(set().sound('bursts together.wav').channels.map(loudest)).toEqual([4000, 4000, 4000]);
  });

  test('a channel without a band has its click, and the text says why it has no burst', () => {
    const { files, silent, notes } = set({}, [{}, { bandHz: [80, 400] }, {}]);
    expect(silent.map(({ id }) => id)).toEqual(['speaker-0', 'speaker-2']);
    const names = files.map(({ name }) => name);
    expect(names).toContain('01 left mid click.wav');
    expect(names).not.toContain('01 left mid burst.wav');
    expect(notes).toContain('The left mid has no burst: its band is not given');
    expect(set({}, [{}, {}, {}]).files.some(({ name }) => name.startsWith('bursts'))).toBe(false);
  });

  test('the text names channels, delays, tones and files, and how to begin', () => {
    const { notes, all, files } = set({ withDelays: true });
    expect(notes).toContain('turn the volume all the way down');
    expect(notes).toContain('set none in the processor');
    expect(notes).toMatch(/highest sample of each channel -12\.0 dB/);
    for (const [i, row] of all.rows.entries())
      expect(notes).toMatch(
        new RegExp(
          `^${row.name} \\(${row.speaker}\\) +${i + 1} +${row.rounded.ms.toFixed(3)} `,
          'm',
        ),
      );
    for (const { name } of files.slice(1)) expect(notes).toContain(name);
    expect(set().notes).toContain('they show the delays set in the processor');
  });

  test('packs into one file, the same bytes every time', () => {
    const { files } = set();
    const zip = zipOf(files);
    expect(Object.keys(unzipSync(zip))).toEqual(files.map(({ name }) => name));
    expect(zipOf(set().files)).toEqual(zip);
  });

  test('fault 8: names that no file system takes become names it takes', () => {
    const { files } = set({}, [{ id: '../../x', bandHz: [80, 400] }, {}, {}]);
    for (const { name } of files) expect(name).toMatch(/^[\w ]+\.(wav|txt)$/);
  });

  test('of no speakers there is the text alone', () => {
    const { files, notes } = set({}, [], []);
    expect(files).toHaveLength(1);
    expect(notes).toContain('No speakers in this option.');
  });

  test('packs the same files in steps, telling how far it is, and lets go when asked', async () => {
    const { files } = set();
    const told: number[] = [];
    const parts = await zipInSteps(files, { told: (done) => told.push(done) });
    const whole = new Uint8Array(await new Blob(parts as BlobPart[]).arrayBuffer());
    const [made, meant] = [unzipSync(whole), unzipSync(zipOf(files))];
    expect(Object.keys(made)).toEqual(Object.keys(meant));
    for (const [name, bytes] of Object.entries(meant))
      expect(Buffer.compare(made[name] ?? new Uint8Array(), bytes), name).toBe(0);
    expect(told).toEqual(files.map((_, i) => i + 1));
    const stop = new AbortController();
    const early: number[] = [];
    const stopped = await zipInSteps(files, {
      told: (done) => {
        early.push(done);
        if (done === 2) stop.abort();
      },
      stop: stop.signal,
    });
    expect(stopped).toBeNull();
    expect(early).toEqual([1, 2]);
  });

  test('says how to use them, by ear and by microphone, and to start quietly', () => {
    const { notes } = set();
    expect(notes).toMatch(/By ear: /);
    expect(notes).toMatch(/By microphone: /);
    expect(notes.replace(/\s+/g, ' ')).toContain('turn the volume all the way down');
  });
});
