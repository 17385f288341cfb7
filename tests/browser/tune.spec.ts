import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { unzipSync } from 'fflate';
import { readWav } from '../../src/exchange';
import { demoPlan } from '../../src/plan/demo';
import { findings } from './axe';
import { withPlainFiles } from './board';
import { evaluatePlan } from './engine';
import { cutOff, laidOut, printed } from './papers';
import { expect, openFresh, test } from './support';

function demoSeat() {
  const answer = evaluatePlan(demoPlan());
  const result = answer.ok ? answer.options[0] : undefined;
  const seat = result?.seats[0];
  if (!result || !seat) throw new Error('the demo has a seat');
  return { delays: seat.delays, speed: result.speedOfSound };
}

const exportDialog = async (page: Page) => {
  await page.getByRole('button', { name: 'Export…' }).focus();
  await page.keyboard.press('Enter');
  return page.getByRole('dialog');
};

test('a tune in inches says what the processor cannot hold, and its sounds carry the delays it sets', async ({
  page,
}) => {
  await withPlainFiles(page);
  await openFresh(page);
  const dialog = await exportDialog(page);
  await dialog.getByLabel('The processor takes').selectOption({ label: 'a step in inches' });
  const longest = dialog.getByLabel('Longest it holds, inches');
  const { delays, speed } = demoSeat();
  const inches = delays.map(({ delay }) => Math.round((delay * speed) / 25.4 / 0.5) * 0.5);
  await longest.fill('20');
  const over = inches.filter((one) => one > 20).length;
  expect(over).toBeGreaterThan(0);
  await expect(dialog.getByText('the most it holds')).toHaveCount(over);
  await expect(dialog.getByText(/the processor holds no more than 1\.47\d ms/)).toBeVisible();
  await longest.fill('4 m');
  await expect(dialog.getByRole('alert')).toContainText('is not a unit that fits here');
  await longest.fill('10 ms');
  await expect(dialog.getByText(/the processor holds up to 10\.000 ms/)).toBeVisible();
  for (const one of inches) await expect(dialog).toContainText(`${one.toFixed(1)} in`);
  expect(await findings(page), 'the export dialog').toEqual([]);

  await dialog.getByLabel(/^Put the delays into the sounds/).check();
  await dialog.getByLabel('Stored as').selectOption({ label: 'WAV, 16 bit' });
  const save = dialog.getByRole('button', { name: 'Save the sounds (ZIP)' });
  await save.focus();
  const [zip] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
  await expect(dialog.getByText('Saved: 17 files.')).toBeVisible();
  const files = unzipSync(new Uint8Array(await readFile(await zip.path())));
  const notes = new TextDecoder().decode(files['what is what.txt']);
  expect(notes).toContain('turn the volume all the way down');
  const sound = readWav(files['clicks together.wav'] ?? new Uint8Array());
  if (!sound.ok) throw new Error(sound.message);
  expect(sound.channels).toHaveLength(delays.length);
  for (const [i, channel] of sound.channels.entries()) {
    let at = 0;
    for (let n = 0; n < 48_000; n++)
      if (Math.abs(channel[n] as number) > Math.abs(channel[at] as number)) at = n;
    // In the middle of its second, later by the delay at whole steps, to the nearest sample.
    const late = (((inches[i] as number) * 25.4) / speed) * 48;
    expect(Math.abs(at - 24_000 - late), `channel ${i + 1}`).toBeLessThanOrEqual(0.51);
  }
});

test('by keyboard: the tune chosen in the dialog is printed, in German, for several seats, no row cut', async ({
  page,
}) => {
  await openFresh(page);
  const dialog = await exportDialog(page);
  await dialog.getByLabel('The processor takes').selectOption({ label: 'a step in ms' });
  await dialog.getByLabel('One step, ms').fill('0,02');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'On paper…' }).focus();
  await page.keyboard.press('Enter');
  await page.getByLabel('Paper', { exact: true }).selectOption({ label: 'Tune sheet' });
  await page.getByLabel('Page size').selectOption('A4');
  await laidOut(page);
  const { delays } = demoSeat();
  const set = (delay: number) => (Math.round(delay / 0.02) * 0.02).toFixed(2);
  const english = (await printed(page)).map(({ text }) => text).join(' ');
  for (const { delay } of delays) expect(english).toContain(`${set(delay)} ms`);
  expect(english).toContain('Start with the volume all the way down');

  await page.getByLabel('Tune for').selectOption({ label: 'several seats' });
  await page.getByLabel('Longest it holds, ms').fill('0,5');
  await page.getByLabel('Language of the paper').selectOption({ label: 'Deutsch' });
  await expect(page.locator('.flow')).toContainText('der beste Kompromiss für');
  await expect(page.locator('.flow')).toContainText('mehr fasst er nicht');
  await expect(page.locator('.flow')).toContainText('Der Prozessor fasst höchstens 0,50 ms');
  expect(await cutOff(page)).toEqual([]);
  expect(await findings(page), 'the tune sheet').toEqual([]);
  const pages = await printed(page);
  expect(pages.every(({ text }) => text.length > 180)).toBe(true);
  expect(pages.at(-1)?.text).toContain(`${pages.length} / ${pages.length}`);
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'On paper…' })).toBeFocused();
});

/** The demo with that many speakers, whether they fit or not. */
function planWith(count: number) {
  const demo = demoPlan();
  const [option] = demo.options;
  const speakers = Array.from({ length: count }, (_, i) => {
    const one = option?.speakers[i % 6];
    if (!one?.mount) throw new Error('the demo’s speakers are mounted');
    const round = Math.floor(i / 6);
    const mount = { ...one.mount, u: Math.min(0.95, one.mount.u + 0.06 * round) };
    return { ...one, id: `${one.id}-${round}`, pair: `${one.pair}-${round}`, mount };
  });
  return { ...demo, title: `With ${count} speakers`, options: [{ id: 'a', speakers }] };
}

test('a tune sheet of 40 speakers has every row once and none cut, one of none says so', async ({
  page,
}) => {
  await withPlainFiles(page);
  await openFresh(page);
  for (const count of [40, 0]) {
    await page.getByRole('button', { name: 'Plans…' }).click();
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('dialog').getByRole('button', { name: 'Open a file' }).click(),
    ]);
    const buffer = Buffer.from(JSON.stringify(planWith(count)));
    await chooser.setFiles({ name: 'plan.json', mimeType: 'application/json', buffer });
    await expect(page).toHaveTitle(new RegExp(`With ${count} speakers`));
    if (await page.getByRole('dialog').isVisible()) await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'On paper…' }).click();
    await page.getByLabel('Paper', { exact: true }).selectOption({ label: 'Tune sheet' });
    await laidOut(page);
    await expect(page.locator('.page .tune-channels tbody tr')).toHaveCount(count);
    if (count === 0) await expect(page.locator('.flow')).toContainText('No speaker');
    expect(await cutOff(page)).toEqual([]);
    expect((await printed(page)).every(({ text }) => text.length > 180)).toBe(true);
    await page.keyboard.press('Escape');
  }
});
