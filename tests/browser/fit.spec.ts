/** Does it fit, and what does the pillar hide: on the page, in the sheets and in the files. */
import type { Page } from '@playwright/test';
import { produce } from 'immer';
import { evaluatePlan, fitOf, pillarViews, zonesAtSpot } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { changeSpeaker, mountSpeaker, type PlanRecipe } from '../../src/plan/edits';
import type { Plan } from '../../src/plan/types';
import { fitSentences } from '../../src/workbench/fit/fit-words';
import { viewSentence } from '../../src/workbench/fit/view-words';
import { carDrawn, textOf, withPlainFiles } from './board';
import { expect, openFresh, test } from './support';

const changed = (...recipes: PlanRecipe[]): Plan =>
  recipes.reduce((plan, recipe) => produce(plan, recipe), demoPlan());

function engine(plan: Plan) {
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  const [option, result] = [plan.options[0], answer.options[0]];
  if (!option || !result) throw new Error('the demo has no option');
  return { cabin: answer.cabin, option, placed: result.placed };
}

const fitNote = (page: Page) => page.getByRole('region', { name: 'Does it fit?' });
const select = (page: Page, name: string) =>
  page.getByRole('button', { name: new RegExp(`^${name}, `) }).click();

async function type(page: Page, label: string, value: string) {
  const field = page
    .getByRole('region', { name: 'Details' })
    .getByRole('textbox', { name: label, exact: true });
  await field.fill(value);
  await field.press('Enter');
}

const sheetButton = (page: Page, name: string) =>
  page.getByRole('toolbar', { name: 'Which numbers' }).getByRole('button', { name, exact: true });

test('a body too deep for the pillar is told in mm, until the panel is measured deeper', async ({
  page,
}) => {
  await openFresh(page);
  await select(page, 'left tweeter');
  await expect(fitNote(page)).toContainText('Fits, as far as the model knows.');
  await type(page, 'Depth', '80');
  const body = { flange: 50, cutout: 45, depth: 80 };
  const subject = engine(changed(changeSpeaker('a', 'tweeter-left', { body })));
  const wanted = fitSentences(fitOf(subject, 'tweeter-left'), 'mm', subject.option.speakers);
  const deep = wanted.find((sentence) => sentence.includes('too deep for the left A-pillar'));
  if (!deep) throw new Error(`not too deep: ${wanted.join(' ')}`);
  for (const sentence of wanted) await expect(fitNote(page).getByText(sentence)).toBeVisible();
  // The short sign beside the pair, in the list and with the answer.
  await expect(page.getByText('Left and right do not fit', { exact: true })).toHaveCount(1);
  await expect(page.getByText(/Left and right tweeter do not fit: /).first()).toBeVisible();

  // By keyboard alone: open the fold, go to the field, type, Enter.
  const fold = fitNote(page).getByText('Measured it? Enter the depth behind the left A-pillar');
  await fold.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  const depth = fitNote(page).getByRole('textbox', { name: 'Depth behind' });
  await expect(depth).toBeFocused();
  await page.keyboard.type('120');
  await page.keyboard.press('Enter');
  await expect(fitNote(page).getByText('too deep for the left A-pillar')).toHaveCount(0);
  await expect(fitNote(page)).toContainText('Measured. Usual: 25 mm.');

  // The other pillar was not measured; and the way back is one button.
  await select(page, 'right tweeter');
  await expect(fitNote(page)).toContainText('too deep for the right A-pillar');
  await select(page, 'left tweeter');
  await fold.click();
  await fitNote(page).getByRole('button', { name: 'Back to the usual' }).click();
  await expect(fitNote(page).getByText(deep)).toBeVisible();
});

test('a place in an airbag’s zone may be typed, and stays warned of on screen and in the file', async ({
  page,
}) => {
  // Drawn, sheet, dialog and file in one go, with the car drawn by software all the while.
  test.slow();
  await withPlainFiles(page);
  await openFresh(page);
  await carDrawn(page);
  await select(page, 'left mid');
  await type(page, 'v, 0 to 1', '0.6');
  const mount = { panel: 'pillar-left', u: 0.4, v: 0.6, standoff: 60 };
  const { cabin, option, placed } = engine(changed(mountSpeaker('a', 'midrange-left', mount)));
  const speaker = option.speakers.find(({ id }) => id === 'midrange-left');
  const place = placed.find((one) => one.speaker === 'midrange-left');
  if (!speaker || !place) throw new Error('no left mid');
  const zones = zonesAtSpot(cabin.keepClear, place, speaker.body);
  expect(zones.length).toBeGreaterThan(0);
  const [zone] = zones;

  await expect(fitNote(page)).toContainText(
    `the place kept clear for the ${zone?.name}: not here.`,
  );
  await expect(page.getByText('Left and right in a keep-clear zone')).toBeVisible();
  await expect(page.getByText(`Keep clear: ${zone?.name}.`)).toBeVisible();
  // In the car, though zones are hidden.
  await expect(page.getByRole('button', { name: 'Keep-clear', exact: true })).toHaveAttribute(
    'aria-pressed',
    'false',
  );
  await expect(page.locator('.scene-label--zone, .scene-label--into').first()).toBeAttached();

  await sheetButton(page, 'Fit').click();
  const row = page.getByRole('row', { name: /left mid keep clear/ });
  await expect(row).toContainText('keep clear');
  await expect(row).toContainText(new RegExp(zone?.name ?? '', 'i'));

  await page.getByRole('button', { name: 'Export…' }).click();
  const dialog = page.getByRole('dialog');
  await expect(dialog).toContainText('Into keep-clear zones');
  await expect(dialog).toContainText(`left mid: ${zones.map(({ name }) => name).join(', ')}`);
  await dialog
    .getByRole('combobox', { name: 'As', exact: true })
    .selectOption({ label: 'CSV, for a spreadsheet' });
  const [csv] = await Promise.all([
    page.waitForEvent('download'),
    dialog.getByRole('button', { name: 'Save file' }).click(),
  ]);
  const lines = (await textOf(csv)).split(/\r?\n/);
  const written = lines.find((line) => line.startsWith('midrange-left,')) ?? '';
  for (const { name } of zones) expect(written).toContain(`${name}: The speaker reaches into`);
  expect(lines.find((line) => line.startsWith('tweeter-left,'))).toContain('none known');
});

test('the view past the pillar is told before and after, by keyboard', async ({ page }) => {
  await openFresh(page);
  await select(page, 'left mid');
  await type(page, 'v, 0 to 1', '0.55');
  const mount = { panel: 'pillar-left', u: 0.4, v: 0.55, standoff: 60 };
  const subject = engine(changed(mountSpeaker('a', 'midrange-left', mount)));
  const views = pillarViews(subject);
  expect(views[0]?.addedDeg).toBeGreaterThan(1);

  await sheetButton(page, 'Times').focus();
  for (let i = 0; i < 30; i++) {
    const now = await page.evaluate(() => document.activeElement?.textContent);
    if (now === 'View') break;
    await page.keyboard.press('ArrowRight');
  }
  await page.keyboard.press('Enter');
  const sheet = page.locator('.view-sheet');
  for (const view of views) {
    await expect(sheet.getByText(viewSentence(view))).toBeVisible();
    const row = sheet.getByRole('row', { name: new RegExp(`^${view.side}`, 'i') });
    for (const deg of [view.beforeDeg, view.afterDeg])
      await expect(row).toContainText(`${deg?.toFixed(1)}°`);
  }
  await expect(sheet.getByText('This is not type approval', { exact: false })).toBeVisible();
  await expect(
    sheet.getByRole('img', {
      name: 'The left A-pillar from above, with the lines of sight past it',
    }),
  ).toBeVisible();
  // In the car as well, as long as the sheet is open.
  await carDrawn(page);
  const inCar = page.locator('[data-pillar="left"]');
  await expect(inCar).toContainText(`hides ${views[0]?.afterDeg?.toFixed(1)}°`);
  await sheetButton(page, 'Times').click();
  await expect(inCar).toHaveCount(0);
});
