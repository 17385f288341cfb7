import type { Page } from '@playwright/test';
import { produce } from 'immer';
import { readDelaysJson } from '../../src/exchange';
import { demoPlan } from '../../src/plan/demo';
import { setCrossover, setSeatWeights } from '../../src/plan/edits';
import { formatFrequency, formatLevel, formatTime } from '../../src/plan/units';
import { carDrawn, pathShown, textOf, undoButton, withPlainFiles } from './board';
import { compromiseOver, evaluatePlan, type Plan, pairsOf, sumsAt } from './engine';
import { expect, openFresh, test } from './support';

/** What the engine says of one option of a plan. */
function stageOf(plan: Plan, index: number) {
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  const option = plan.options[index];
  const result = answer.options[index];
  if (!option || !result) throw new Error(`the plan has no option ${index}`);
  return { plan, cabin: answer.cabin, option, result };
}

function arrivalOf(stage: ReturnType<typeof stageOf>, speaker: string) {
  const seat = stage.result.seats.find(({ id }) => id === 'front-left');
  const arrival = seat?.arrivals.find((one) => one.speaker === speaker);
  if (!arrival) throw new Error(`no arrival of ${speaker}`);
  return arrival;
}

const openSheet = (page: Page, title: string) =>
  page
    .getByRole('toolbar', { name: 'Which numbers' })
    .getByRole('button', { name: title, exact: true })
    .click();

const selectMid = (page: Page) => page.getByRole('button', { name: /^left mid, / }).click();

test('a blocked line is told, listed and drawn as the way round that the engine found', async ({
  page,
}) => {
  await openFresh(page);
  await carDrawn(page);
  await page.getByRole('radio').nth(1).check({ force: true });
  const arrival = arrivalOf(stageOf(demoPlan(), 1), 'midrange-left');
  expect(arrival.line).toBe('blocked');
  expect(await pathShown(page, 'left mid')).toBe(Math.round(arrival.path));
  const words = page.getByRole('region', { name: 'At the front left seat' });
  const loss = arrival.bands.find(({ frequencyHz }) => frequencyHz === 1000)?.obstructionDb;
  const told = `−${Math.round(loss ?? Number.NaN)} dB at 1 kHz`;
  await expect(words.getByText(/Left mid goes round .*left thigh/).first()).toContainText(told);
  await openSheet(page, 'Arrivals');
  const row = page.getByRole('row', { name: /^left mid / });
  await expect(row).toContainText(String(Math.round(arrival.path)));
  await selectMid(page);
  await expect(page.locator('.scene-host')).toContainText(/round the listener's left thigh, \+/);
});

test('the first reflection of a tweeter is the engine’s, in words and drawn', async ({ page }) => {
  await openFresh(page);
  await carDrawn(page);
  await page.getByRole('button', { name: /^right tweeter, / }).click();
  await openSheet(page, 'Reflections');
  const { reflections } = arrivalOf(stageOf(demoPlan(), 0), 'tweeter-right');
  const strong = reflections.filter(({ levelDb }) => (levelDb ?? -99) >= -10);
  const first = strong[0];
  if (!first) throw new Error('the demo’s right tweeter has a strong reflection');
  const sheet = page.locator('.answer-sheet');
  await expect(sheet).toContainText(
    `after ${formatTime(first.extraTime)} at ${formatLevel(first.levelDb)}`,
  );
  await expect(sheet.getByRole('img').first()).toBeVisible();
  await expect(page.locator('.scene-host')).toContainText(formatTime(first.extraTime));
  // Closing the sheet takes it out of the drawing.
  await openSheet(page, 'Times');
  await expect(page.locator('.scene-host')).not.toContainText(formatTime(first.extraTime));
});

test('a crossover is changed by keyboard, its sum is the engine’s, and undo brings it back', async ({
  page,
}) => {
  await openFresh(page);
  await page.getByLabel('Listen at').selectOption({ label: 'front right seat' });
  await openSheet(page, 'Crossovers');
  const frequency = page.getByRole('textbox', { name: 'Frequency' });
  await expect(frequency).toHaveValue('2500');
  await frequency.fill('3200');
  await frequency.press('Enter');
  const changed = produce(
    demoPlan(),
    setCrossover('a', 'midrange', 'tweeter', {
      family: 'linkwitz-riley',
      order: 4,
      frequencyHz: 3200,
    }),
  );
  const sums = sumsAt(stageOf(changed, 0), 'front-right').filter(
    ({ crossing }) => crossing.crossover.above === 'tweeter',
  );
  expect(sums).toHaveLength(2);
  const list = page.getByRole('list', { name: /^The sum of / });
  for (const { result } of sums) {
    if (!result) throw new Error('no sum');
    const { deviationDb, frequencyHz } = result.atCrossover;
    await expect(list).toContainText(
      Math.abs(deviationDb) < 0.05
        ? `Ideal at ${formatFrequency(frequencyHz)}`
        : `${formatLevel(deviationDb)} from ideal at ${formatFrequency(frequencyHz)}`,
    );
  }
  await undoButton(page).click();
  await expect(frequency).toHaveValue('2500');
});

test('delays for two seats are the best compromise, on the sheet and in the file', async ({
  page,
}) => {
  await withPlainFiles(page);
  await openFresh(page);
  await openSheet(page, 'Seats');
  await page.getByRole('button', { name: 'for several' }).click();
  const plan = produce(demoPlan(), (draft) => {
    setSeatWeights(demoPlan().alignment.seats ?? [])(draft);
    draft.alignment.by = 'seats';
  });
  const { result, option } = stageOf(plan, 0);
  const best = compromiseOver(
    result,
    pairsOf(option.speakers),
    plan.alignment.seats ?? [],
    plan.alignment.sampleRateHz,
  );
  if ('problem' in best) throw new Error(best.problem);
  const sheet = page.locator('.answer-sheet');
  for (const { largestError } of best.seats)
    await expect(sheet).toContainText(largestError.toFixed(3));
  await expect(sheet).toContainText('No delay can save the tweeters');

  await page.getByRole('button', { name: 'Export…' }).click();
  const dialog = page.getByRole('dialog');
  await dialog
    .getByRole('combobox', { name: 'As', exact: true })
    .selectOption({ label: 'JSON, for a program' });
  const download = page.waitForEvent('download');
  await dialog.getByRole('button', { name: 'Save file' }).click();
  const file = readDelaysJson(await textOf(await download));
  if (!file.ok) throw new Error(file.message);
  for (const { speaker, delay } of best.channels) {
    const row = file.delays.find((one) => one.speaker === speaker);
    expect(Math.abs((row?.delayMs ?? Number.NaN) - delay), speaker).toBeLessThan(1e-9);
  }
});

test('the image is told for the seat in view and drawn before it; another seat has its own', async ({
  page,
}) => {
  await openFresh(page);
  await carDrawn(page);
  await openSheet(page, 'Image');
  const sheet = page.locator('.answer-sheet');
  await expect(sheet).toContainText(/centre-panned sound .* at the front left seat/);
  await expect(page.locator('.scene-host')).toContainText('with delays and gains');
  await page.getByLabel('Listen at').selectOption({ label: 'front right seat' });
  await expect(sheet).toContainText(/centre-panned sound .* at the front right seat/);
});

test('measured responses are taken from files, refused with their line, and change the levels', async ({
  page,
}) => {
  await withPlainFiles(page);
  await openFresh(page);
  await selectMid(page);
  await openSheet(page, 'Levels');
  const loss = page.locator('.answer-sheet').getByText(/^Off the axis here/);
  const asPiston = (await loss.textContent()) ?? '';
  const details = page.getByRole('region', { name: 'Details' });
  await details.getByRole('button', { name: 'Measured responses…' }).click();
  const dialog = page.getByRole('dialog');
  const give = async (name: string, text: string) => {
    const chooser = page.waitForEvent('filechooser');
    await dialog.getByRole('button', { name: /^Choose (more )?files…/ }).click();
    await (await chooser).setFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
  };
  await give('bad.txt', '100 0\n200 x\n');
  await expect(dialog).toContainText('bad.txt');
  await expect(dialog.getByRole('alert')).toContainText('Line 2: the level is not a number');
  await dialog.getByRole('button', { name: /bad\.txt/ }).click();
  const rows = ['200 0 -1 -2', '400 0 -2 -5', '800 0 -3 -9', '1600 0 -4 -12', '3000 0 -6 -20'];
  await give('mid.txt', ['Hz 0 30 90', ...rows].join('\n'));
  const take = dialog.getByRole('button', { name: 'Take these responses' });
  await expect(take).toBeEnabled();
  await take.click();
  await expect(details).toContainText(/Measured: /);
  await expect(loss).not.toHaveText(asPiston);
  await undoButton(page).click();
  await expect(details).toContainText('Reckoned as a piston');
  await expect(loss).toHaveText(asPiston);
});
