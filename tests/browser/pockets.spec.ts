/** Sealed pockets: both sides drawn, changed, compared; every number is the engine's own. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';
import { produce } from 'immer';
import { buildCabin, pocketsOf } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { changePocket, type PlanRecipe, setSmallSignal } from '../../src/plan/edits';
import type { Plan } from '../../src/plan/types';
import { carDrawn, undoButton } from './board';
import { expect, openFresh, test } from './support';

const axeSource = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

const changed = (...recipes: PlanRecipe[]): Plan =>
  recipes.reduce((plan, recipe) => produce(plan, recipe), demoPlan());

function engine(plan: Plan) {
  const built = buildCabin(plan);
  const [option] = plan.options;
  if (!built.ok || !option) throw new Error('the demo is refused');
  return pocketsOf({ cabin: built.cabin, option }).pockets;
}

async function openPockets(page: Page): Promise<void> {
  await page
    .getByRole('toolbar', { name: 'Which numbers' })
    .getByRole('button', { name: 'Pockets', exact: true })
    .click();
  await expect(page.getByRole('region', { name: 'Left pocket' })).toBeVisible();
}

const side = (page: Page, name: 'Left' | 'Right') =>
  page.getByRole('region', { name: `${name} pocket` });

async function type(page: Page, label: string, value: string, inside = page.locator('main')) {
  const field = inside.getByRole('textbox', { name: label, exact: true }).first();
  await field.fill(value);
  await field.press('Enter');
}

/** Litres, fc and Qtc as shown, held to the engine's. */
async function expectEngines(page: Page, plan: Plan): Promise<void> {
  const [left, right] = engine(plan);
  for (const [name, study] of [
    ['Left', left],
    ['Right', right],
  ] as const) {
    if (!study?.box || study.netLitres === null) throw new Error(`no box on the ${name}`);
    const region = side(page, name);
    await expect(
      region.getByText(`${study.netLitres.toFixed(1)} litres`, { exact: true }),
    ).toBeVisible();
    await expect(region.locator('.pocket-facts')).toContainText(
      `fc${Math.round(study.box.resonanceHz)} Hz`,
    );
    await expect(region.locator('.pocket-facts')).toContainText(`Qtc${study.box.q.toFixed(2)}`);
  }
}

test('both pockets show the engine’s litres and resonance, and follow what is typed', async ({
  page,
}) => {
  await openFresh(page);
  await openPockets(page);
  await expectEngines(page, demoPlan());
  const sheet = page.locator('.pockets-sheet');
  await type(page, 'fs', '48,5', sheet);
  await type(page, 'Qts', '0.51', sheet);
  await type(page, 'Vas', '14', sheet);
  const unit = { resonanceHz: 48.5, q: 0.51, vasLitres: 14 };
  await expectEngines(page, changed(setSmallSignal('a', 'midbass-left', unit)));
  await type(page, 'Depth', '50+22', side(page, 'Right'));
  const deeper = changed(
    setSmallSignal('a', 'midbass-left', unit),
    changePocket('a', 'pocket-right', { depth: 72 }),
  );
  await expectEngines(page, deeper);
  await expect(sheet.getByText(/^The right pocket is .* litres smaller/)).toBeVisible();
  await sheet.getByRole('button', { name: 'Make the right so deep' }).click();
  const litres = (await side(page, 'Left').locator('.pocket-net strong').textContent()) ?? '';
  await expect(side(page, 'Right').locator('.pocket-net strong')).toHaveText(litres);
  await expect(sheet.getByText(/^Both hold/)).toBeVisible();
  await undoButton(page).click();
  await expectEngines(page, deeper);
});

test('a corner is dragged, moved by keys and typed; each is one undo step', async ({ page }) => {
  await openFresh(page);
  await openPockets(page);
  const net = side(page, 'Left').locator('.pocket-net strong');
  const corner = page.getByRole('slider', { name: 'Corner 2 of the left pocket' });
  const start = {
    litres: await net.textContent(),
    at: await corner.getAttribute('aria-valuetext'),
  };

  await corner.scrollIntoViewIfNeeded();
  const box = await corner.locator('rect').boundingBox();
  if (!box) throw new Error('the corner is not on the page');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 20, y, { steps: 4 });
  await page.mouse.move(x + 40, y - 4, { steps: 4 });
  await page.mouse.up();
  await expect(net).not.toHaveText(start.litres ?? '');
  const dragged = await corner.getAttribute('aria-valuetext');
  expect(dragged).not.toBe(start.at);
  await undoButton(page).click();
  await expect(net).toHaveText(start.litres ?? '');
  await expect(corner).toHaveAttribute('aria-valuetext', start.at ?? '');

  await corner.focus();
  const across = Number(/^(\d+) mm/.exec(start.at ?? '')?.[1]);
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(corner).toHaveAttribute('aria-valuetext', new RegExp(`^${across + 21} mm across`));
  await expect(corner).toBeFocused();

  const list = side(page, 'Left').locator('.pocket-corners');
  await list.getByText('Its 4 corners, typed').click();
  const second = list.getByRole('group', { name: 'Corner 2 of the left pocket' });
  await second.getByRole('textbox', { name: 'Across' }).fill(String(across));
  await second.getByRole('textbox', { name: 'Across' }).press('Enter');
  await expect(corner).toHaveAttribute('aria-valuetext', new RegExp(`^${across} mm across`));
  await second.getByRole('button', { name: 'Add one after it' }).click();
  await expect(list.getByText('Its 5 corners, typed')).toBeVisible();
  await page.getByRole('slider', { name: 'Corner 3 of the left pocket' }).press('Delete');
  await expect(list.getByText('Its 4 corners, typed')).toBeVisible();
  // Delete took a corner, not a speaker.
  await expect(page.getByRole('button', { name: /^left midbass, / })).toBeVisible();
});

test('pockets are drawn from nothing by keyboard, in inches, and in the car', async ({ page }) => {
  await openFresh(page);
  await carDrawn(page);
  await openPockets(page);
  for (const name of ['Left', 'Right'] as const)
    await side(page, name).getByRole('button', { name: 'Remove this pocket' }).press('Enter');
  await expect(page.getByText(/^No sealed pocket is drawn in this option yet/)).toBeVisible();
  await page.getByRole('button', { name: 'inch' }).click();
  await page.getByRole('button', { name: 'Draw sealed pockets' }).press('Enter');
  await expect(side(page, 'Left').locator('.pocket-net strong')).toHaveText(/ litres$/);
  await expect(side(page, 'Right').locator('.pocket-net strong')).toHaveText(/ litres$/);
  await type(page, 'Depth', '3', side(page, 'Left'));
  await undoButton(page).click();
  await expect(page.getByRole('slider', { name: 'Corner 1 of the left pocket' })).toHaveAttribute(
    'aria-valuetext',
    / in across, .* in up$/,
  );
});

for (const scheme of ['light', 'dark'] as const)
  test.describe(`in the ${scheme} look`, () => {
    test.use({ colorScheme: scheme });
    test('the sheet has no accessibility violation', async ({ page }) => {
      await openFresh(page);
      await openPockets(page);
      for (const summary of await page.locator('.pockets-sheet summary').all())
        await summary.click();
      await page.evaluate(readFileSync(axeSource, 'utf8'));
      const found = await page.evaluate(async () => {
        interface Answer {
          passes: unknown[];
          violations: { id: string; nodes: { html: string }[] }[];
        }
        const { axe } = window as unknown as { axe: { run(): Promise<Answer> } };
        const { violations, passes } = await axe.run();
        if (passes.length < 10) return ['axe looked at too little'];
        return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
      });
      expect(found).toEqual([]);
    });
  });

test('narrow as a telephone, the sheet does not widen the page', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await openFresh(page);
  await openPockets(page);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(wide).toBeLessThanOrEqual(390);
});
