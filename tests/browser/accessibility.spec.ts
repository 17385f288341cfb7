import { findings } from './axe';
import { carDrawn } from './board';
import { expect, openFresh, test } from './support';

const SHEETS = [
  'Arrivals',
  'Pairs',
  'Delays',
  'Reflections',
  'Levels',
  'Crossovers',
  'Image',
  'Seats',
  'What matters',
  'Fit',
  'View',
  'Map',
  'Best spots',
];

for (const scheme of ['light', 'dark'] as const) {
  test.describe(`in the ${scheme} look`, () => {
    test.use({ colorScheme: scheme });

    test('the page has no accessibility violation, in every set of numbers', async ({ page }) => {
      // Every rule over every set, some fifteen rounds of several seconds each.
      test.setTimeout(240_000);
      await openFresh(page);
      await carDrawn(page);
      expect(await findings(page)).toEqual([]);
      for (const set of SHEETS) {
        await page
          .getByRole('toolbar', { name: 'Which numbers' })
          .getByRole('button', { name: set, exact: true })
          .click();
        await expect(page.getByText('Working it out…')).toHaveCount(0);
        expect(await findings(page), set).toEqual([]);
      }
      await page.getByRole('button', { name: /^left tweeter, / }).click();
      expect(await findings(page), 'a speaker selected').toEqual([]);
      await page.getByRole('button', { name: 'Whole car' }).click();
      await page.getByRole('button', { name: 'Adjust the front left seat' }).click();
      expect(await findings(page), 'a seat selected').toEqual([]);
    });

    for (const button of ['Plans…', 'New car…', 'Export…', 'Keys…']) {
      test(`the dialog behind “${button}” has no accessibility violation`, async ({ page }) => {
        await openFresh(page);
        await page.getByRole('button', { name: button }).click();
        await expect(page.getByRole('dialog')).toBeVisible();
        expect(await findings(page)).toEqual([]);
      });
    }
  });
}

test('narrow as a telephone, the page has no accessibility violation and no sideways scroll', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await openFresh(page);
  expect(await findings(page)).toEqual([]);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(wide).toBeLessThanOrEqual(390);
});
