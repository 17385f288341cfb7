/** Files read for the sheet “Measured”: one after the other, stopped, refused, replaced. */
import { beforeEach, describe, expect, test } from 'vitest';
import { writeWav } from '../../../../src/exchange';
import { demoPlan } from '../../../../src/plan/demo';
import {
  answerRate,
  bindTrack,
  measuredStore,
  startAfresh,
} from '../../../../src/workbench/answers/measured/measured-store';
import { cancelReading, readFiles } from '../../../../src/workbench/answers/measured/read-files';
import { response, sinc } from '../../../geometry/measure/synthetic';

const speakers = demoPlan().options[0]?.speakers ?? [];
const sound = response([{ shape: sinc, at: 500, level: 0.8 }], 40, 1, 1500);
const wav = (name: string, channels = 1): File =>
  new File(
    [
      writeWav({ sampleRateHz: 48000, channels: Array(channels).fill(sound) }, 'int16').slice()
        .buffer,
    ],
    name,
  );

let opened = 0;
beforeEach(() => startAfresh(++opened));
const state = () => measuredStore.getState();

describe('files with responses', () => {
  test('are read in turn and bound by their names; those of no name wait', async () => {
    await readFiles([wav('tweeter left.wav'), wav('MB R.wav'), wav('run 7.wav')], speakers);
    expect(state().tracks.map(({ file, speaker }) => [file, speaker])).toEqual([
      ['tweeter left.wav', 'tweeter-left'],
      ['MB R.wav', 'midbass-right'],
      ['run 7.wav', null],
    ]);
    expect(state()).toMatchObject({ reading: null, refused: [], said: '3 of 3 files read.' });
  });

  test('of several channels give one each, and none is bound by guess', async () => {
    await readFiles([wav('tweeter left.wav', 3)], speakers);
    expect(state().tracks.map(({ channel, of, speaker }) => [channel, of, speaker])).toEqual([
      [1, 3, null],
      [2, 3, null],
      [3, 3, null],
    ]);
  });

  test('that are broken are told by name, and nothing read before is lost', async () => {
    await readFiles([wav('tweeter left.wav')], speakers);
    await readFiles([new File(['RIFF'], 'short.wav'), new File([], 'nothing.txt')], speakers);
    expect(state().refused).toEqual([
      { file: 'short.wav', message: 'byte 0: the file is only 4 bytes long, so it is no WAV file' },
      { file: 'nothing.txt', message: 'it is empty' },
    ]);
    expect(state().tracks).toHaveLength(1);
  });

  test('read again take the place of the earlier, and keep what was said of them', async () => {
    await readFiles([wav('run 7.wav')], speakers);
    bindTrack(state().tracks[0]?.key ?? '', 'midrange-left');
    await readFiles([wav('run 7.wav')], speakers);
    expect(state().tracks.map(({ speaker }) => speaker)).toEqual(['midrange-left']);
  });

  test('are left where they are when reading is stopped, and what was read stays', async () => {
    const reading = readFiles([wav('tweeter left.wav'), wav('tweeter right.wav')], speakers);
    await new Promise<void>((resolve) => {
      const stop = measuredStore.subscribe(({ reading: now }) => {
        if (now?.done !== 1) return;
        stop();
        queueMicrotask(() => {
          cancelReading();
          resolve();
        });
      });
    });
    await reading;
    expect(state().tracks.map(({ file }) => file)).toEqual(['tweeter left.wav']);
    expect(state()).toMatchObject({ reading: null, said: 'Stopped: 1 of 2 files read.' });
  });

  test('without a rate are asked for it', async () => {
    await readFiles([new File([[...sound].join('\n')], 'tweeter left.txt')], speakers);
    const [track] = state().tracks;
    expect(track).toMatchObject({ sampleRateHz: null, asksRate: true, speaker: 'tweeter-left' });
    answerRate(track?.key ?? '', 96000);
    expect(state().tracks[0]?.sampleRateHz).toBe(96000);
  });

  test('by the hundred are a wrong folder', async () => {
    await readFiles(
      Array.from({ length: 81 }, (_, i) => wav(`${i}.wav`)),
      speakers,
    );
    expect(state().refused).toEqual([
      { file: '81 files', message: 'no more than 80 are read at once' },
    ]);
  });

  test('of another plan are forgotten', async () => {
    await readFiles([wav('tweeter left.wav')], speakers);
    startAfresh(++opened);
    expect(state().tracks).toEqual([]);
  });
});
