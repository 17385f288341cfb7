/** Measured against predicted: responses made from the engine's own times, dropped in and read. */
import type { Locator, Page } from '@playwright/test';
import { writeWav } from '../../src/exchange';
import { evaluatePlan } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { response, sinc } from '../geometry/measure/synthetic';
import { undoButton, withPlainFiles } from './board';
import { expect, openFresh, test } from './support';

const RATE = 48000;
const LOOP_MS = 8.4;
const answer = evaluatePlan(demoPlan());
if (!answer.ok) throw new Error(answer.error.message);
const result = answer.options[0];
const seat = result?.seats.find(({ id }) => id === 'front-left');
if (!result || !seat) throw new Error('no seat');

/** A response for each speaker after a loop nobody knows, in noise; the right tweeter 0.5 ms late. */
const files = () =>
  seat.arrivals.map(({ speaker, time }, i) => {
    const ms = time + LOOP_MS + (speaker === 'tweeter-right' ? 0.5 : 0);
    const samples = response(
      [
        { shape: sinc, at: (ms * RATE) / 1000, level: 0.6 },
        { shape: sinc, at: ((ms + 1.3) * RATE) / 1000, level: -0.25 },
      ],
      44,
      31 + i,
      4800,
    );
    const encoding = (['int16', 'int24', 'float32'] as const)[i % 3] ?? 'int24';
    return {
      name: `${speaker.replace('-', ' ')}.wav`,
      mimeType: 'audio/wav',
      buffer: Buffer.from(writeWav({ sampleRateHz: RATE, channels: [samples] }, encoding)),
    };
  });

const broken = {
  name: 'cut off.wav',
  mimeType: 'audio/wav',
  buffer: Buffer.from(
    writeWav({ sampleRateHz: RATE, channels: [new Float64Array(400)] }, 'int16').slice(0, 300),
  ),
};

async function openSheet(page: Page) {
  await withPlainFiles(page);
  await openFresh(page);
  await page
    .getByRole('toolbar', { name: 'Which numbers' })
    .getByRole('button', { name: 'Measured', exact: true })
    .click();
  return page.locator('.measured-sheet');
}

/** As a drag from the system's own window ends. */
async function drop(page: Page, sheet: Locator, all: ReturnType<typeof files>) {
  const named = all.map(({ name, buffer }) => ({ name, base64: buffer.toString('base64') }));
  const dataTransfer = await page.evaluateHandle((dropped) => {
    const data = new DataTransfer();
    for (const { name, base64 } of dropped)
      data.items.add(
        new File([Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0))], name, {
          type: 'audio/wav',
        }),
      );
    return data;
  }, named);
  await sheet.dispatchEvent('drop', { dataTransfer });
}

test('responses dropped in are read, the late one is named, taken into the survey, and undone', async ({
  page,
}) => {
  const sheet = await openSheet(page);
  await drop(page, sheet, [...files(), broken]);

  const read = page.getByRole('region', { name: 'Responses and their first arrivals' });
  await expect(read.getByRole('row')).toHaveCount(seat.arrivals.length + 1);
  await expect(sheet.getByRole('alert')).toContainText(
    /cut off\.wav: byte 4: the file says it is \d+ bytes long, but there are only 300/,
  );
  await expect(sheet).toContainText(
    /Right tweeter arrives 0\.(49|50|51) ms \(\d+ mm\) later than predicted/,
  );
  await expect(sheet).toContainText('As a whole the measurement does not fit the plan.');
  const rows = page.getByRole('region', { name: 'Measured against predicted' }).last();
  await expect(rows.getByText('stands out')).toHaveCount(1);
  await expect(rows.getByText('as expected')).toHaveCount(seat.arrivals.length - 1);
  await expect(sheet.locator('.measured-drawing')).toHaveCount(seat.arrivals.length);

  await rows.getByLabel('Take the difference of the right tweeter').check();
  await sheet.getByRole('button', { name: /as readings$/ }).click();
  const readings = page.getByRole('region', { name: 'Readings' });
  await expect(readings.getByRole('row', { name: /^Right tweeter/ })).toContainText('sound');
  await undoButton(page).click();
  await expect(readings).toHaveCount(0);

  await sheet.getByRole('button', { name: 'Keep these arrivals in the plan' }).click();
  await expect(sheet).toContainText('As kept in the plan, at the middle of the head');
  await undoButton(page).click();
  await expect(
    sheet.getByRole('button', { name: 'Keep these arrivals in the plan' }),
  ).toBeVisible();
});
