/** Measured against predicted: responses made from the engine's own times, dropped in and read. */
import type { Locator, Page } from '@playwright/test';
import { writeWav } from '../../src/exchange';
import { distance, evaluatePlan, type Vec3 } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { response, sinc } from '../geometry/measure/synthetic';
import { findings } from './axe';
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

  const read = page.getByRole('list', { name: 'Responses and their first arrivals' });
  await expect(read.getByRole('listitem')).toHaveCount(seat.arrivals.length);
  await expect(read.getByText('both agree within 0.05 ms')).toHaveCount(3);
  await expect(sheet.getByRole('alert')).toContainText(
    /cut off\.wav: byte 4: the file says it is \d+ bytes long, but there are only 300/,
  );
  await expect(sheet).toContainText(
    /Right tweeter arrives 0\.(49|50|51) ms \(\d+ mm\) later than predicted/,
  );
  await expect(sheet).toContainText('As a whole the measurement does not fit the plan.');
  const rows = page.getByRole('region', { name: 'Channel by channel' });
  await expect(rows.getByText('stands out')).toHaveCount(1);
  await expect(rows.getByText('as expected')).toHaveCount(seat.arrivals.length - 1);
  await expect(sheet.locator('.measured-drawing')).toHaveCount(seat.arrivals.length);

  expect(await findings(page)).toEqual([]);

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

test('by keyboard: a text is chosen, its rate and speaker answered, and a place found by tapes is taken and undone', async ({
  page,
}) => {
  const sheet = await openSheet(page);
  const tools = page.getByRole('toolbar', { name: 'Which numbers' });
  await tools.getByRole('button', { name: 'Measured', exact: true }).focus();
  const lines = [...response([{ shape: sinc, at: 480.3 }], 50, 5, 900)].map((one) =>
    one.toFixed(6),
  );
  const choose = sheet.getByRole('button', { name: 'Choose responses…' });
  await choose.focus();
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.keyboard.press('Enter'),
  ]);
  await chooser.setFiles([
    { name: 'run 3.txt', mimeType: 'text/plain', buffer: Buffer.from(lines.join('\n')) },
  ]);
  const rate = sheet.getByRole('textbox', { name: 'Sample rate' });
  await rate.focus();
  await page.keyboard.type('48000');
  await page.keyboard.press('Enter');
  await expect(sheet).toContainText('One response waits for its speaker');
  await sheet.getByLabel('Speaker of run 3.txt').focus();
  await page.keyboard.type('Left tw');
  await expect(sheet).toContainText('A single channel shows only what the loop takes');

  const { cabin } = answer.ok ? answer : { cabin: null };
  const spot = result.placed.find(({ speaker }) => speaker === 'tweeter-left')?.position;
  if (!cabin || !spot) throw new Error('no spot');
  const real: Vec3 = [spot[0] + 14, spot[1] + 6, spot[2] - 9];
  const place = sheet.getByRole('combobox', { name: 'What is looked for' });
  await expect(place).toHaveValue(/tweeter-left/);
  const to = sheet.getByRole('combobox', { name: 'Tape from the left tweeter to' });
  const tape = sheet.getByRole('textbox', { name: 'Distance' });
  for (let taken = 0; taken < 5; taken++) {
    const { reference } = JSON.parse(await to.inputValue());
    const point = cabin.references.find(({ id }) => id === reference)?.point as Vec3;
    await tape.focus();
    await page.keyboard.type(`${Math.round(distance(point, real))}`);
    await page.keyboard.press('Enter');
    await expect(sheet.getByRole('button', { name: /^Remove the reading/ })).toHaveCount(taken + 1);
  }
  await expect(sheet).toContainText(/By 5 readings the left tweeter stands 1[5-9] mm from where/);
  const put = sheet.getByRole('button', { name: 'Put the left tweeter there, as a free point' });
  await put.focus();
  await page.keyboard.press('Enter');
  await expect(sheet).toContainText('stands where the plan has it, as far as they can tell');
  await page.keyboard.press('ControlOrMeta+z');
  await expect(sheet).toContainText(/By 5 readings the left tweeter stands 1[5-9] mm from where/);
});
