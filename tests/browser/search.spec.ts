import { createRequire } from 'node:module';
import type { Locator, Page } from '@playwright/test';
import { demoPlan } from '../../src/plan/demo';
import { readSearchRequest } from '../../src/plan/schema';
import { formatAngle, formatLength, formatLevel, formatTime } from '../../src/plan/units';
import { carDrawn, pathShown, undoButton } from './board';
import { type FoundSpot, type SearchRequest, searchSpots, searchStage } from './engine';
import { expect, openFresh, test } from './support';

const axeSource = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** Rules broken inside the open sheet. */
async function violations(page: Page): Promise<string[]> {
  const { readFileSync } = await import('node:fs');
  await page.evaluate(readFileSync(axeSource, 'utf8'));
  return page.evaluate(async () => {
    interface Answer {
      violations: { id: string; nodes: { html: string }[] }[];
    }
    const axe = (window as unknown as { axe: { run(where: string): Promise<Answer> } }).axe;
    const answer = await axe.run('.answer-sheet');
    return answer.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
  });
}

const openSheet = (page: Page) =>
  page
    .getByRole('toolbar', { name: 'Which numbers' })
    .getByRole('button', { name: 'Best spots', exact: true })
    .click();

const searchButton = (page: Page) => page.getByRole('button', { name: 'Search', exact: true });
const answersTable = (page: Page) => page.getByRole('table', { name: 'The answers, best first' });

/** Opens the folded field and sets a grid coarse enough for a test. */
async function coarseGrid(page: Page, step: string) {
  await page.getByText('Listeners, weights and grid').click();
  const grid = page.getByRole('textbox', { name: 'Grid' });
  await grid.fill(step);
  await grid.press('Enter');
}

/** The request the page shows, and what the engine here finds by it. */
async function engineAnswer(page: Page) {
  await page.getByRole('button', { name: 'Request as JSON…' }).click();
  const text = await page.getByRole('textbox', { name: 'The request as JSON' }).inputValue();
  const read = readSearchRequest(text);
  if (!read.ok) throw new Error(`${read.error.path}: ${read.error.message}`);
  expect(read.warnings).toEqual([]);
  const found = searchSpots(demoPlan(), read.request as SearchRequest);
  if (!found.ok) throw new Error(found.error.message);
  return found.answer;
}

async function expectMeasures(row: Locator, { measures, score }: FoundSpot) {
  const { difference, offAxisDeg, obstructionDb, firstReflectionTime } = measures;
  await expect(row).toContainText(formatLength(difference, 'mm'));
  await expect(row).toContainText(formatAngle(offAxisDeg));
  await expect(row).toContainText(formatLevel(obstructionDb));
  await expect(row).toContainText(
    firstReflectionTime === null ? 'none' : formatTime(firstReflectionTime),
  );
  await expect(row).toContainText(score.toFixed(2));
}

test('the second best spot for the tweeters becomes an option, with the numbers the engine gives it', async ({
  page,
}) => {
  test.setTimeout(180_000);
  await openFresh(page);
  await carDrawn(page);
  // From the speaker's details straight to the search for its pair.
  await page.getByRole('button', { name: /^left tweeter, / }).click();
  await page.getByRole('button', { name: 'Search spots for this pair' }).click();
  await expect(page.getByLabel('Search spots for')).toHaveValue('tweeter');
  await coarseGrid(page, '40');
  const engine = await engineAnswer(page);
  await searchButton(page).click();
  const table = answersTable(page);
  await expect(table).toBeVisible({ timeout: 90_000 });
  await expect(
    page.getByText(`${engine.tried} spots tried, ${engine.feasible} allowed.`),
  ).toBeVisible();
  const rows = table.getByRole('row').filter({ has: page.getByRole('radio') });
  await expect(rows).toHaveCount(engine.answers.length);
  for (const [n, spot] of engine.answers.entries()) await expectMeasures(rows.nth(n), spot);

  const second = engine.answers[1];
  if (!second) throw new Error('the demo’s tweeters have more than one spot');
  await rows.nth(1).getByText('2', { exact: true }).click();
  // Marked in the drawing, both sides.
  await expect(page.locator('[data-place="2L"] .is-strong')).toBeAttached();
  await expect(page.locator('[data-place="2R"] .is-strong')).toBeAttached();
  const chosen = page.getByRole('region', { name: 'Spot 2', exact: true });
  await expect(chosen).toContainText('mm along');
  // The usual cautions for these panels stand where the spot is proposed.
  await expect(chosen).toContainText('check every spot against the vehicle maker’s documents');
  expect(await violations(page)).toEqual([]);

  const options = page.getByRole('group', { name: 'Option on the board' });
  await expect(options.getByRole('radio')).toHaveCount(2);
  await chosen.getByRole('button', { name: 'Take as a new option' }).click();
  await expect(options.getByRole('radio')).toHaveCount(3);
  await expect(page.getByRole('status').filter({ hasText: 'is on the board as' })).toBeAttached();
  // What the page says of the new option is what the search promised.
  await expect
    .poll(async () =>
      Math.abs((await pathShown(page, 'left tweeter')) - (await pathShown(page, 'right tweeter'))),
    )
    .toBeGreaterThanOrEqual(Math.floor((second.measures.difference ?? 0) - 1));
  await page.getByRole('button', { name: 'Pairs', exact: true }).click();
  await expect(page.getByRole('row', { name: /^tweeters/ })).toContainText(
    formatLength(second.measures.difference, 'mm'),
  );
  // Out of the drawing with its sheet.
  await expect(page.locator('[data-place]')).toHaveCount(0);
  await undoButton(page).click();
  await expect(options.getByRole('radio')).toHaveCount(2);
});

test('a running search is stopped, and a change of the plan marks what was found before', async ({
  page,
}) => {
  test.setTimeout(180_000);
  await openFresh(page);
  await openSheet(page);
  await coarseGrid(page, '5');
  await searchButton(page).click();
  await expect(page.getByRole('progressbar')).toBeVisible({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText(/^Stopped/)).toBeVisible();
  await expect(page.getByRole('progressbar')).toHaveCount(0);
  await expect(answersTable(page)).toHaveCount(0);

  // A second search is not held up by the one given up.
  const grid = page.getByRole('textbox', { name: 'Grid' });
  await grid.fill('80');
  await grid.press('Enter');
  await searchButton(page).click();
  await expect(answersTable(page)).toBeVisible({ timeout: 90_000 });
  await expect(page.getByText(/^Stopped/)).toHaveCount(0);
  const changed = page.getByText('The plan has changed since; search again.');
  await expect(changed).toHaveCount(0);
  await page.getByRole('button', { name: /^left tweeter, / }).click();
  const along = page.getByRole('textbox', { name: 'Along panel' });
  await along.fill('40');
  await along.press('Enter');
  await expect(changed).toBeVisible();
  await undoButton(page).click();
  await expect(changed).toHaveCount(0);
});

test('where nothing is allowed, the page says what rules the spots out and what would have to give', async ({
  page,
}) => {
  test.setTimeout(180_000);
  await openFresh(page);
  await openSheet(page);
  await coarseGrid(page, '120');
  await page.getByText('Panels, aim and demands').click();
  const limit = page.getByRole('textbox', { name: 'Off the axis, at most' });
  await limit.fill('200');
  await limit.press('Enter');
  await expect(page.getByText('Must be between 0° and 180°.')).toBeVisible();
  await limit.fill('1');
  await limit.press('Enter');
  await searchButton(page).click();
  await expect(page.getByText(/No spot is allowed/)).toBeVisible({ timeout: 90_000 });
  const why = page.getByRole('region', { name: 'Why spots are not allowed' });
  await expect(why).toContainText(/\d+ because a listener is too far off the axis/, {
    timeout: 90_000,
  });
  await expect(why).toContainText(/^(Allow|Each spot is ruled out)/);
  expect(await violations(page)).toEqual([]);
});

test('by keyboard alone: search, go through the answers with the arrows, take one with N, undo', async ({
  page,
}) => {
  test.setTimeout(180_000);
  await openFresh(page);
  await carDrawn(page);
  const tabTo = async (target: Locator) => {
    for (let i = 0; i < 150; i++) {
      if (await target.evaluate((element) => element === document.activeElement)) return;
      await page.keyboard.press('Tab');
    }
    throw new Error('Tab never reached it');
  };
  const bar = page.getByRole('toolbar', { name: 'Which numbers' });
  await tabTo(bar.locator('[tabindex="0"]'));
  await page.keyboard.press('End');
  while (
    !(await bar
      .getByRole('button', { name: 'Best spots' })
      .evaluate((element) => element === document.activeElement))
  )
    await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Enter');
  await tabTo(page.getByText('Listeners, weights and grid'));
  await page.keyboard.press('Enter');
  await tabTo(page.getByRole('textbox', { name: 'Grid' }));
  await page.keyboard.type('60');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Shift+Tab');
  for (let i = 0; i < 60; i++) {
    if (await searchButton(page).evaluate((element) => element === document.activeElement)) break;
    await page.keyboard.press('Shift+Tab');
  }
  await page.keyboard.press('Enter');
  const table = answersTable(page);
  await expect(table).toBeVisible({ timeout: 90_000 });
  const radio = (n: number) => table.getByRole('radio').nth(n);
  await tabTo(radio(0));
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await expect(radio(2)).toBeFocused();
  await expect(radio(2)).toBeChecked();
  await expect(page.getByRole('region', { name: 'Spot 3', exact: true })).toBeVisible();
  const options = page.getByRole('group', { name: 'Option on the board' });
  await page.keyboard.press('n');
  await expect(options.getByRole('radio')).toHaveCount(3);
  await expect(radio(2)).toBeFocused();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Enter');
  await expect(options.getByRole('radio')).toHaveCount(4);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(options.getByRole('radio')).toHaveCount(2);
});

test('the whole front stage is searched together, and a set is taken as one option', async ({
  page,
}) => {
  test.setTimeout(240_000);
  await openFresh(page);
  await openSheet(page);
  await page.getByLabel('Search spots for').selectOption({ label: 'the whole front stage' });
  await coarseGrid(page, '100');
  await page.getByRole('button', { name: 'Request as JSON…' }).click();
  const text = await page.getByRole('textbox', { name: 'The request as JSON' }).inputValue();
  const read = readSearchRequest(text);
  if (!read.ok || !('pairs' in read.request)) throw new Error('a request for several pairs');
  expect(read.request.pairs.map(({ pair }) => pair)).toEqual(['tweeter', 'midrange', 'midbass']);
  const found = searchStage(demoPlan(), read.request);
  if (!found.ok) throw new Error(found.error.message);
  const { answers } = found.answer;
  await searchButton(page).click();
  const rows = answersTable(page)
    .getByRole('row')
    .filter({ has: page.getByRole('radio') });
  await expect(rows).toHaveCount(answers.length, { timeout: 120_000 });
  for (const [n, { measures, score }] of answers.entries()) {
    await expect(rows.nth(n)).toContainText(formatLength(measures.pathSpread, 'mm'));
    await expect(rows.nth(n)).toContainText(score.toFixed(2));
  }
  expect(await violations(page)).toEqual([]);
  const options = page.getByRole('group', { name: 'Option on the board' });
  await page.getByRole('button', { name: 'Take as a new option' }).click();
  await expect(options.getByRole('radio')).toHaveCount(3);
  await undoButton(page).click();
  await expect(options.getByRole('radio')).toHaveCount(2);
});
