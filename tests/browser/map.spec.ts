import type { Page } from '@playwright/test';
import { produce } from 'immer';
import {
  evaluatePlan,
  type GridSpot,
  gridSpot,
  type MapPanel,
  mapInSteps,
  type OptionResult,
} from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { mountSpeaker } from '../../src/plan/edits';
import { signedLength } from '../../src/plan/units';
import { carDrawn, undoButton } from './board';
import { expect, openFresh, test } from './support';

const OPTION = 'a';
const MID = 'midrange-left';
const STEP = 40;

/** The grids the page paints, as the engine lays them. */
function grids(): readonly MapPanel[] {
  const steps = mapInSteps(demoPlan(), {
    option: OPTION,
    speaker: MID,
    quantities: ['difference'],
    step: STEP,
  });
  const first = steps.next();
  if (first.done) throw new Error('nothing to paint');
  return first.value.map.panels;
}

function spotNumbered(k: number): GridSpot {
  const grid = grids().find((g) => k >= g.first && k < g.first + g.columns * g.rows);
  if (!grid) throw new Error(`no spot ${k}`);
  return gridSpot(grid, k - grid.first);
}

/** The demo with the mids moved as a hand would move them, worked out. */
function withMidsAt({ panel, u, v }: GridSpot): OptionResult {
  const who = panel.endsWith('right') ? 'midrange-right' : MID;
  const answer = evaluatePlan(produce(demoPlan(), mountSpeaker(OPTION, who, { panel, u, v })));
  const result = answer.ok ? answer.options.find(({ id }) => id === OPTION) : null;
  if (!result) throw new Error('the demo is worked out');
  return result;
}

function differenceAt(spot: GridSpot): string {
  const seat = withMidsAt(spot).seats.find(({ id }) => id === 'front-left');
  const difference = seat?.pairs.find(({ pair }) => pair === 'midrange')?.difference;
  return signedLength(difference ?? null, 'mm');
}

/** Where the demo's mids stand. */
function midsNow(): GridSpot {
  const mount = demoPlan()
    .options.find(({ id }) => id === OPTION)
    ?.speakers.find(({ id }) => id === MID)?.mount;
  if (!mount) throw new Error('the demo has a mounted left mid');
  return mount;
}

/** "434": a difference as the page writes it, without its sign and unit. */
const sizeOf = (difference: string): string => difference.replace(/^[+−]/, '').replace(' mm', '');

function anglesAt(spot: GridSpot): number {
  const seat = withMidsAt(spot).seats.find(({ id }) => id === 'front-left');
  const who = spot.panel.endsWith('right') ? 'midrange-right' : MID;
  return Math.round(
    seat?.arrivals.find(({ speaker }) => speaker === who)?.offAxisDeg ?? Number.NaN,
  );
}

const state = (page: Page) => page.locator('[data-map]');
const reading = (page: Page) => page.getByRole('region', { name: 'Pointed at' });
const pad = (page: Page) => page.getByRole('application', { name: 'The point on the panel' });
const number = (page: Page, quantity: string) =>
  reading(page).locator(`[data-quantity="${quantity}"] dd`);

async function paintMids(page: Page): Promise<void> {
  await openFresh(page);
  await carDrawn(page);
  await page.getByRole('button', { name: /^left mid, / }).click();
  await page.getByRole('button', { name: 'Paint the panels' }).click();
  await page.locator('.map-more > summary').click();
  await page.getByLabel('A spot every').selectOption(String(STEP));
  await page.locator('.map-more > summary').click();
}

const painted = (page: Page) =>
  expect(state(page)).toHaveAttribute('data-map', 'done', { timeout: 90_000 });

/** The number of the spot marked on the drawing, and where it is on the screen. */
async function marked(page: Page): Promise<{ spot: number; x: number; y: number }> {
  const mark = page.locator('[data-spot]');
  await expect(mark).toBeAttached();
  const box = await mark.boundingBox();
  if (!box) throw new Error('the mark is on the sheet');
  return { spot: Number(await mark.getAttribute('data-spot')), x: box.x + 1, y: box.y + 1 };
}

const frames = (page: Page) => page.locator('.scene-canvas').getAttribute('data-scene-frames');

/** Nothing is drawn any more: the count of frames stands still. */
async function stillness(page: Page): Promise<void> {
  let last: string | null = null;
  await expect
    .poll(
      async () => {
        const before = last;
        last = await frames(page);
        return last === before;
      },
      { intervals: [700], timeout: 30_000 },
    )
    .toBe(true);
}

test('paint the dash for the mids, point at it and read what the engine says of that spot', async ({
  page,
}) => {
  test.setTimeout(180_000);
  await paintMids(page);
  await painted(page);
  await expect(page.getByText(/^Fits at [\d,]+ of [\d,]+ spots/)).toBeVisible();
  const here = sizeOf(differenceAt(midsNow()));
  await expect(
    page.getByText(new RegExp(`^Least difference where it fits.*; here ${here} mm\\.`)),
  ).toBeVisible();

  await page.getByRole('button', { name: 'People', exact: true }).click();
  await page.getByRole('button', { name: 'Plan', exact: true }).click();
  await page.getByLabel('Point at').selectOption('dash-top-right');
  await expect(page.locator('.scene-canvas')).toHaveAttribute('data-scene-view', 'plan');
  const chosen = await marked(page);
  expect(spotNumbered(chosen.spot).panel).toBe('dash-top-right');
  await expect(number(page, 'difference')).toContainText(differenceAt(spotNumbered(chosen.spot)));

  // A click on the held spot lets go of it; then the reading follows the pointer.
  await page.mouse.click(chosen.x, chosen.y);
  await page.mouse.move(chosen.x + 2, chosen.y + 22, { steps: 4 });
  await expect.poll(async () => (await marked(page)).spot).not.toBe(chosen.spot);
  await stillness(page);
  const pointed = spotNumbered((await marked(page)).spot);
  await expect(number(page, 'difference')).toContainText(differenceAt(pointed));
  await expect(number(page, 'offAxisDeg')).toHaveText(`${anglesAt(pointed)}°`);

  const still = await frames(page);
  await page.waitForTimeout(1500);
  expect(await frames(page)).toBe(still);

  // Closing the sheet takes the paint and the mark off.
  await page
    .getByRole('toolbar', { name: 'Which numbers' })
    .getByRole('button', { name: 'Times' })
    .click();
  await expect(page.locator('[data-spot]')).toHaveCount(0);
});

test('by keyboard: choose a panel, walk the point, hear the reading, put the mids there, undo', async ({
  page,
}) => {
  test.setTimeout(180_000);
  await paintMids(page);
  await painted(page);
  await page.getByLabel('Point at').selectOption('dash-top-left');
  await pad(page).focus();
  const before = await marked(page);
  await page.keyboard.press('ArrowRight');
  await expect.poll(async () => (await marked(page)).spot).not.toBe(before.spot);
  const { spot } = await marked(page);
  const there = spotNumbered(spot);
  const difference = differenceAt(there);
  await expect(reading(page).getByRole('status')).toContainText(
    `Difference, left minus right ${difference}`,
  );
  await page.keyboard.press('Enter');
  await expect(undoButton(page)).toBeEnabled();
  await expect(page.getByLabel('Panel', { exact: true })).toHaveValue('dash-top-left');
  await expect(
    page.getByRole('button', {
      name: new RegExp(`^Left mid is ${sizeOf(difference)} mm (nearer|farther)`),
    }),
  ).toBeVisible();
  // Moved about on the panels the mids give the same map: it is not painted anew.
  await expect(state(page)).toHaveAttribute('data-map', 'done');
  await undoButton(page).click();
  const back = sizeOf(differenceAt(midsNow()));
  await expect(
    page.getByRole('button', { name: new RegExp(`^Left mid is ${back} mm nearer`) }),
  ).toBeVisible();
});

test('an edit drops the map under way and begins the new one; Stop stops it', async ({ page }) => {
  test.setTimeout(180_000);
  await openFresh(page);
  await page.getByRole('button', { name: /^left mid, / }).click();
  await page.getByRole('button', { name: 'Paint the panels' }).click();
  await page.locator('.map-more > summary').click();
  await page.getByLabel('A spot every').selectOption('10');
  const bar = page.getByRole('progressbar', { name: 'How far the painting has got' });
  const done = () => bar.evaluate((element) => (element as HTMLProgressElement).value);
  await expect.poll(done, { timeout: 60_000 }).toBeGreaterThan(1000);
  const before = await done();
  const standoff = page.getByLabel('Stand-off');
  await standoff.fill('12');
  await standoff.press('Enter');
  await expect.poll(done, { intervals: [50] }).toBeLessThan(before);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await expect(state(page)).toHaveAttribute('data-map', 'stopped');
  await page.getByLabel('A spot every').selectOption(String(STEP));
  await painted(page);
});

test.describe('by touch', () => {
  test.use({ hasTouch: true });

  test('a tap on a painted panel reads the spot there, the next one the next, a third puts the mids there', async ({
    page,
  }) => {
    test.setTimeout(180_000);
    await paintMids(page);
    await painted(page);
    await page.getByRole('button', { name: 'People', exact: true }).tap();
    await page.getByRole('button', { name: 'Plan', exact: true }).tap();
    await page.getByLabel('Point at').selectOption('dash-top-right');
    await expect(page.locator('.scene-canvas')).toHaveAttribute('data-scene-view', 'plan');
    const first = await marked(page);
    const tapped: number[] = [];
    for (const [dx, dy] of [
      [2, 22],
      [22, 22],
    ] as const) {
      await page.touchscreen.tap(first.x + dx, first.y + dy);
      await expect
        .poll(async () => (await marked(page)).spot)
        .not.toBe(tapped.at(-1) ?? first.spot);
      await stillness(page);
      const { spot } = await marked(page);
      tapped.push(spot);
      const there = spotNumbered(spot);
      await expect(number(page, 'difference')).toContainText(differenceAt(there));
      await expect(number(page, 'offAxisDeg')).toHaveText(`${anglesAt(there)}°`);
    }
    expect(new Set(tapped).size).toBe(2);
    // What was tapped puts the mids there, with its cautions beside it.
    await reading(page)
      .getByRole('button', { name: /^Put .* here/ })
      .tap();
    await expect(undoButton(page)).toBeEnabled();
  });
});
