/** Sound arriving a thousand times slower: stepped, played, and still where the system asks for it. */
import type { Page } from '@playwright/test';
import { evaluatePlan, slowMotion } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { findings } from './axe';
import { carDrawn, textOf, withPlainFiles } from './board';
import { expect, openFresh, test } from './support';

const sheet = (page: Page) => page.locator('.slow-sheet');
const slider = (page: Page) => page.getByRole('slider', { name: 'Moment, ms' });
const clock = (page: Page) => page.locator('[data-clock]');
const frames = async (page: Page) =>
  Number(await page.locator('.scene-canvas').getAttribute('data-scene-frames'));

async function openSlowMotion(page: Page): Promise<void> {
  await openFresh(page);
  await carDrawn(page);
  await page
    .getByRole('toolbar', { name: 'Which numbers' })
    .getByRole('button', { name: 'Slow motion' })
    .click();
  await expect(slider(page)).toBeVisible();
}

/** The engine's own slow motion of the demo's option `i` at the driver's head. */
function engine(i: number, delays: 'none' | 'aligned') {
  const plan = demoPlan();
  const answer = evaluatePlan(plan);
  const option = plan.options[i];
  if (!answer.ok || !option) throw new Error('the demo is refused');
  const result = answer.options[i];
  if (!result) throw new Error('the option has no answer');
  return slowMotion({ plan, cabin: answer.cabin, option, result }, 'front-left', delays);
}

/** How many arrivals of an option the list has ticked off, by sign. */
const ticked = (page: Page, option = 0) =>
  page.locator('.reaches').nth(option).locator('td[data-there="true"]');

/** Lets the page draw so many frames. */
const after = (page: Page, count: number) =>
  page.evaluate(
    (left) =>
      new Promise<void>((done) => {
        const next = (k: number) => (k > 0 ? requestAnimationFrame(() => next(k - 1)) : done());
        next(left);
      }),
    count,
  );

test('is stepped through by keyboard, beside another option, before and after delays, and saved', async ({
  page,
}) => {
  await withPlainFiles(page);
  await openSlowMotion(page);
  const none = engine(0, 'none');
  const by = (time: number, motion = none) =>
    motion.reaches.filter((reach) => reach.time <= time).length;
  await slider(page).focus();
  await expect(ticked(page)).toHaveCount(0);
  for (let i = 0; i < 20; i++) await page.keyboard.press('ArrowRight');
  await expect(clock(page)).toHaveText('2.00');
  expect(by(2)).toBeGreaterThan(1);
  await expect(ticked(page)).toHaveCount(by(2));
  await page.keyboard.press('PageUp');
  await page.keyboard.press('ArrowLeft');
  await expect(clock(page)).toHaveText('2.90');
  await expect(ticked(page)).toHaveCount(by(2.9));
  await expect(slider(page)).toHaveAttribute(
    'aria-valuetext',
    /^2\.90 ms\. .* 2 of 6 have reached/,
  );
  await expect(sheet(page).getByRole('status').first()).toContainText('2.90 ms.');
  // As large in the drawing as the sound has come by then.
  const wave = none.waves.find(({ speaker }) => speaker === 'tweeter-left');
  const ball = sheet(page).locator('[data-wave="tweeter-left"] [data-part="ball"]').first();
  const drawn = Number(await ball.getAttribute('r'));
  expect(Math.abs(drawn - (2.9 - (wave?.start ?? 0)) * none.speed)).toBeLessThan(0.01);
  await page.keyboard.press('Home');
  await page.getByRole('button', { name: 'Next arrival' }).press('Enter');
  const first = none.reaches.find(({ at }) => at === 'head');
  await expect(clock(page)).toHaveText((first?.time ?? 0).toFixed(2));

  await page.getByLabel('Second option').selectOption('b');
  await expect(page.locator('.reaches')).toHaveCount(2);
  await page.getByRole('button', { name: 'With delays' }).press('Enter');
  const [a, b] = [engine(0, 'aligned'), engine(1, 'aligned')];
  await slider(page).press('End');
  await expect(clock(page)).toHaveText(Math.max(a.end, b.end).toFixed(2));
  await expect(ticked(page, 0)).toHaveCount(18);
  await slider(page).press('PageDown');
  const at = Number(await slider(page).inputValue());
  await expect(ticked(page, 0)).toHaveCount(by(at, a));
  await expect(ticked(page, 1)).toHaveCount(by(at, b));
  await expect(page.locator('.scene-half')).toHaveCount(2);

  const [svg] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as SVG' }).press('Enter'),
  ]);
  expect(await textOf(svg)).toMatch(
    /^<\?xml[\s\S]*<svg [\s\S]*Mids in the kick panels, with delays[\s\S]*<\/svg>/,
  );
  const [png] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as PNG' }).press('Enter'),
  ]);
  expect(png.suggestedFilename()).toMatch(/\.png$/);
  expect((await textOf(png)).slice(1, 4)).toBe('PNG');
});

test('plays a millisecond in a second, draws only while it does, and stops where it is told', async ({
  page,
}) => {
  await openSlowMotion(page);
  // Every change of the clock, with the time it was made at.
  await clock(page).evaluate((element) => {
    const seen: [number, number][] = [];
    new MutationObserver(() => seen.push([performance.now(), Number(element.textContent)])).observe(
      element,
      { childList: true, characterData: true, subtree: true },
    );
    (window as unknown as { seen: typeof seen }).seen = seen;
  });
  await slider(page).focus();
  const before = await frames(page);
  await page.keyboard.press('Space');
  await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible();
  // Counted from its second change: the first frames of a busy machine come late.
  const played = () =>
    page.evaluate(() => {
      const { seen: all } = window as unknown as { seen: [number, number][] };
      return (all.at(-1)?.[1] ?? 0) - (all[1]?.[1] ?? 0);
    });
  await expect.poll(played, { timeout: 20_000 }).toBeGreaterThan(0.9);
  await page.keyboard.press('Space');
  await expect(page.getByRole('button', { name: 'Play', exact: true })).toBeVisible();
  const seen = await page.evaluate(() => (window as unknown as { seen: [number, number][] }).seen);
  // A change is seen when its frame is done, which on a busy machine is now and then late: the
  // middle one of the rates between all changes far apart is not moved by that.
  const rates = seen.slice(1).flatMap(([from, early], i, all) =>
    all
      .slice(i + 1)
      .filter(([, late]) => late - early > 0.3)
      .map(([to, late]) => (to - from) / (late - early)),
  );
  rates.sort((x, y) => x - y);
  expect(rates.length).toBeGreaterThan(3);
  expect(Math.abs((rates[rates.length >> 1] as number) / 1000 - 1)).toBeLessThan(0.04);
  expect(await frames(page)).toBeGreaterThan(before + 3);

  const stands = await clock(page).textContent();
  await after(page, 3);
  const still = await frames(page);
  await after(page, 20);
  expect(await clock(page).textContent()).toBe(stands);
  expect(await frames(page)).toBe(still);
  // Closed, it is over: nothing is drawn for it, and it begins anew.
  await page.getByRole('button', { name: 'Times' }).click();
  await page.getByRole('button', { name: 'Slow motion' }).click();
  await expect(clock(page)).toHaveText('0.00');
});

test('stands still where the system asks for less motion: steps, slider and Space go on', async ({
  page,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await openSlowMotion(page);
  await expect(page.getByText('Your system asks for less motion')).toBeVisible();
  await after(page, 20);
  await expect(clock(page)).toHaveText('0.00');
  const heads = engine(0, 'none').reaches.filter(({ at }) => at === 'head');
  await slider(page).focus();
  for (const { time } of heads.slice(0, 2)) {
    await page.keyboard.press('Space');
    await expect(clock(page)).toHaveText(time.toFixed(2));
    await after(page, 10);
    await expect(clock(page)).toHaveText(time.toFixed(2));
  }
  await page.getByRole('button', { name: '0.1 ms on' }).click();
  await expect(clock(page)).toHaveText(
    (Math.floor((heads[1]?.time ?? 0) * 10) / 10 + 0.1).toFixed(2),
  );
  await slider(page).fill('3.5');
  await expect(clock(page)).toHaveText('3.50');
  await sheet(page).locator('summary').click();
  expect(await findings(page)).toEqual([]);
});
