/**
 * A simulated installer who has nothing but the printed sheet and the car: reads names and tapes off
 * it, tapes 3 mm wrong now and then, and marks where the three arcs come nearest to meeting.
 */
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { distance, nearestOnPatch, pointOnPatch, type Vec3 } from '../../../src/geometry';
import { patchPartials } from '../../../src/geometry/cabin/patch';
import { demoPlan } from '../../../src/plan/demo';
import { markOutBlocks } from '../../../src/sheets/mark-out';
import { wordsOf } from '../../../src/sheets/words/use-words';
import { contentOf, factsOfPlan, plainText, referenceNamed } from './papers';

/** Numbers from 0 to 1, the same in each run (mulberry32). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const RUNS = 1000;
const words = wordsOf('en', 'mm');

const CARS = [
  ['estate', 'left', 0],
  ['estate', 'right', 1],
  ['city-car', 'left', 1],
  ['large-suv', 'right', 0],
  ['two-seat-coupe', 'left', 0],
] as const;

describe('an installer with the sheet in hand', () => {
  test.each(CARS)(
    '%s, wheel on the %s, option %i: 95 marks in 100 lie within the printed error',
    (template, wheelSide, option) => {
      const facts = factsOfPlan({ ...demoPlan(), cabin: { template, wheelSide } }, option);
      const { cabin, result } = facts;
      const blocks = markOutBlocks(words, facts, 'A4');
      const random = seeded(20_261_128);
      const normal = () =>
        Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
      let all = 0;
      for (const { id, mount } of facts.option.speakers) {
        const sheet = renderToStaticMarkup(contentOf(blocks, `spot-${id}`));
        // Number, name and tape of each row; the fourth is there to check by.
        const rows = [
          ...sheet.matchAll(
            /<tr><td>(\d)<\/td><th scope="row">(.*?)<\/th><td class="number">(.*?)<\/td>/g,
          ),
        ].map(([, , name = '', tape = '']) => ({
          point: referenceNamed(
            cabin.references,
            plainText(name).replace(' (to check by)', ''),
            words.names.reference,
          ).point,
          tape: Number(/^(\d+) mm$/.exec(plainText(tape))?.[1]),
        }));
        expect(rows.length, id).toBeGreaterThanOrEqual(3);
        const taped = rows.slice(0, 3);
        const [, sd, error] = (
          /With tapes (\d+) mm wrong .* within ([\d.]+) mm of the spot/.exec(plainText(sheet)) ?? []
        ).map(Number);
        expect(sd).toBe(3);
        expect(error).toBeGreaterThan(3);

        const panel = cabin.panels.find((one) => one.id === mount?.panel);
        const place = result.placed.find((one) => one.speaker === id);
        if (!panel || !place || !mount || error === undefined) throw new Error(`${id} has no spot`);
        const spot = pointOnPatch(panel.patch, mount.u, mount.v);
        const start = nearestOnPatch(panel.patch, spot);
        let within = 0;
        for (let run = 0; run < RUNS; run++) {
          const read = taped.map(({ tape }) => tape + 3 * normal());
          let [u, v] = [start.u, start.v];
          for (let step = 0; step < 8; step++) {
            const point = pointOnPatch(panel.patch, u, v);
            const { du, dv } = patchPartials(panel.patch, u, v);
            let [aa, ab, bb, ga, gb] = [0, 0, 0, 0, 0];
            taped.forEach(({ point: anchor }, n) => {
              const reach = distance(anchor, point);
              const way = point.map(
                (x, k) => (x - (anchor[k] as number)) / reach,
              ) as unknown as Vec3;
              const a = way[0] * du[0] + way[1] * du[1] + way[2] * du[2];
              const b = way[0] * dv[0] + way[1] * dv[1] + way[2] * dv[2];
              const off = (read[n] as number) - reach;
              aa += a * a;
              ab += a * b;
              bb += b * b;
              ga += a * off;
              gb += b * off;
            });
            const det = aa * bb - ab * ab;
            u += (bb * ga - ab * gb) / det;
            v += (aa * gb - ab * ga) / det;
          }
          if (distance(pointOnPatch(panel.patch, u, v), spot) <= error) within++;
        }
        // 1,000 runs of 95 %: standard deviation 6.9.
        expect(within, `${template} ${id}`).toBeGreaterThanOrEqual(0.95 * RUNS - 3 * 6.9);
        all += within / RUNS / facts.option.speakers.length;
      }
      expect(all).toBeGreaterThan(0.94);
    },
  );
});
