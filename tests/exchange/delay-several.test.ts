/** Delays for several seats at once, and what a file says of every seat. */
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import {
  delayExport,
  exportedFor,
  readDelaysCsv,
  readDelaysJson,
  toCsv,
  toJson,
  toText,
} from '../../src/exchange';
import { channelSettings, compromiseOver, pairsOf } from '../../src/geometry';
import { delaysOf, type SamplePlan, samplePlan, stageOf } from './sample';

/** Two speakers ahead, two heads: the one head is nearer to the left, the other to the right. */
function twoSeats(ids = ['front-left', 'front-right']): SamplePlan {
  const plan = samplePlan(
    [1000, 1000],
    [{ position: [-1000, -600, 0] }, { position: [-1000, 600, 0] }],
  );
  const [a, b] = ids as [string, string];
  const seats = [
    { id: a, head: [0, -380, 0] as const },
    { id: b, head: [0, 240, 0] as const },
  ];
  const speakers = plan.options[0]?.speakers.map((speaker) => ({
    ...speaker,
    aim: { kind: 'seat' as const, seat: a },
  }));
  return {
    ...plan,
    seats,
    options: [{ id: 'a', title: 'Only', speakers: speakers ?? [] }],
    alignment: {
      seat: a,
      sampleRateHz: 48000,
      by: 'seats',
      seats: [
        { id: a, weight: 2 },
        { id: b, weight: 1 },
      ],
    },
  };
}

const several = (plan: SamplePlan) => delaysOf(plan, { for: exportedFor(stageOf(plan)) });
const rowsOf = (csv: string) => Papa.parse<string[]>(csv.trimEnd()).data;
const column = (csv: string, heading: string) => {
  const [headings = [], ...rows] = rowsOf(csv);
  const at = headings.indexOf(heading);
  if (at < 0) throw new Error(`no column ${heading} in ${headings.join()}`);
  return rows.map((row) => row[at]);
};

describe('delays for several seats', () => {
  test('are the compromise’s, and what the page sets its channels to', () => {
    const plan = twoSeats();
    const stage = stageOf(plan);
    const all = several(plan);
    const pairs = pairsOf(stage.option.speakers);
    const best = compromiseOver(stage.result, pairs, plan.alignment.seats ?? [], 48000);
    if ('problem' in best) throw new Error(best.problem);
    expect(all.by).toBe('seats');
    expect(all.rows.map((row) => row.delay.ms)).toEqual(best.channels.map(({ delay }) => delay));
    expect(all.rows.map((row) => row.gainDb)).toEqual(best.channels.map(({ gainDb }) => gainDb));
    const set = channelSettings(stage).channels;
    for (const [i, row] of all.rows.entries()) {
      expect(Math.abs(row.rounded.ms - (set[i]?.delay ?? 9))).toBeLessThan(1e-12);
    }
    expect(all.rows.some((row) => row.delay.ms > 0)).toBe(true);
    expect(all.seats.map(({ largestErrorMs }) => largestErrorMs)).toEqual(
      best.seats.map(({ largestError }) => largestError),
    );
  });

  test('leave each seat what two speakers on either side of a middle must: worked by hand', () => {
    const all = several(twoSeats());
    const c = all.speedOfSound;
    const far = (y: number, side: number) => Math.hypot(1000, y - side * 600);
    // Left less right at each seat, ms; weights 2 and 1 share the spread between them 1 to 2.
    const [a, b] = [-380, 240].map((y) => (far(y, -1) - far(y, 1)) / c) as [number, number];
    const [first, second] = all.seats;
    expect(Math.abs((first?.largestErrorMs ?? 9) - (b - a) / 6)).toBeLessThan(1e-6);
    expect(Math.abs((second?.largestErrorMs ?? 9) - (b - a) / 3)).toBeLessThan(1e-6);
    for (const { largestErrorMs: wanted, largestErrorSetMs: set } of all.seats)
      expect(Math.abs(set - wanted)).toBeLessThanOrEqual(0.5 / 48);
  });

  test('errors as set count a delay the processor cannot hold', () => {
    const plan = twoSeats();
    const whom = exportedFor(stageOf(plan));
    const none = delaysOf(plan, { for: whom, largestMs: 0 });
    const c = none.speedOfSound;
    const difference = Math.hypot(1000, 220) - Math.hypot(1000, 980);
    expect(
      Math.abs((none.seats[0]?.largestErrorSetMs ?? 0) - Math.abs(difference) / c / 2),
    ).toBeLessThan(1e-9);
    expect(none.rows.some((row) => row.clamped)).toBe(true);
  });

  test('follow the plan: the seats it lists, else all alike, else its one seat', () => {
    const plan = twoSeats();
    const said = (alignment: SamplePlan['alignment']) =>
      exportedFor(stageOf({ ...plan, alignment }));
    expect(said(plan.alignment)).toEqual({ by: 'seats', seats: plan.alignment.seats });
    expect(said({ sampleRateHz: 48000, by: 'seats' })).toEqual({
      by: 'seats',
      seats: [
        { id: 'front-left', weight: 1 },
        { id: 'front-right', weight: 1 },
      ],
    });
    expect(said({ ...plan.alignment, by: 'seat', seat: 'front-right' })).toEqual({
      by: 'seat',
      seat: 'front-right',
    });
    expect(said({ sampleRateHz: 48000 })).toEqual({ by: 'seat', seat: 'front-left' });
  });

  test('without a seat to serve there is no file but a sentence', () => {
    const plan = twoSeats();
    const answer = delayExport(stageOf(plan), {
      for: { by: 'seats', seats: [{ id: 'boot', weight: 1 }] },
      step: { kind: 'time', ms: 0.01 },
    });
    expect(answer).toEqual({ problem: 'there is no seat "boot" in this plan' });
  });
});

describe('a file for several seats', () => {
  test('says in CSV of each seat its weight, its paths and what it is left with', () => {
    const all = several(twoSeats());
    const csv = toCsv(all);
    expect(column(csv, 'seat')).toEqual(Array(2).fill('front-left; front-right'));
    expect(column(csv, 'front-left_weight')).toEqual(['2', '2']);
    expect(column(csv, 'front-left_path_mm')).toEqual(['1023.91', '1400.14']);
    expect(column(csv, 'front-right_path_mm')).toEqual(['1305.99', '1062.83']);
    const errors = column(csv, 'front-right_error_ms').map(Number);
    const largest = Number(column(csv, 'front-right_largest_error_ms')[0]);
    expect(Math.max(...errors.map(Math.abs))).toBe(largest);
    expect(Math.abs(largest - (all.seats[1]?.largestErrorSetMs ?? 0))).toBeLessThanOrEqual(0.5e-4);
    expect(csv).not.toContain(',path_mm,');
  });

  test('says in text for whom it is and what they are left with', () => {
    const text = toText(several(twoSeats()));
    expect(text).toContain(
      'Seats: the best compromise over front left seat (counts 2), front right seat (counts 1)',
    );
    expect(text).toMatch(/At the front right seat: no speaker is more than 0\.\d{3} ms \(\d+ mm\)/);
    expect(text).toContain('late by ms');
  });

  test('comes back from CSV and JSON as it was written', () => {
    const all = several(twoSeats());
    const json = readDelaysJson(toJson(all));
    expect(json.ok && json.delays.map(({ delayMs }) => delayMs)).toEqual(
      all.rows.map((row) => row.delay.ms),
    );
    const csv = readDelaysCsv(toCsv(all));
    if (!csv.ok) throw new Error(csv.message);
    for (const [i, row] of all.rows.entries()) {
      expect(csv.delays[i]?.speaker).toBe(row.speaker);
      expect(Math.abs((csv.delays[i]?.delayMs ?? 9) - row.delay.ms)).toBeLessThanOrEqual(0.5e-4);
    }
  });

  test('fault 9: a seat named like a formula runs in no cell and no heading', () => {
    const csv = toCsv(several(twoSeats(['=1+1', '@b'])));
    for (const cell of rowsOf(csv).flat())
      if (!/^-?\d/.test(cell)) expect(cell).not.toMatch(/^[=+\-@]/);
    expect(column(csv, "'=1+1_weight")).toEqual(['2', '2']);
    expect(readDelaysCsv(csv)).toMatchObject({ ok: true });
  });
});
