import type { Locator, Page } from '@playwright/test';
import { demoPlan } from '../../src/plan/demo';
import { carDrawn, pathShown, textOf, withPlainFiles } from './board';
import { expect, openFresh, reopen, test } from './support';

/** Presses Tab (or Shift+Tab) until `target` has the focus. */
async function tabTo(page: Page, target: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab') {
  for (let i = 0; i < 150; i++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press(key);
  }
  throw new Error('Tab never reached it');
}

test('the whole job by keyboard: add a pair, move it, undo, redo, reload, export, refuse a file', async ({
  page,
}) => {
  test.setTimeout(180_000);
  await withPlainFiles(page);
  await openFresh(page);
  await carDrawn(page);
  const column = page.getByRole('region', { name: 'Options and speakers' });

  await tabTo(page, column.locator('summary'));
  await page.keyboard.press('Enter');
  const role = column.getByRole('combobox', { name: 'Role' });
  await tabTo(page, role);
  await page.keyboard.type('wideband');
  await expect(role.locator('option:checked')).toHaveText('wideband');
  await tabTo(page, column.getByRole('button', { name: 'Add widebands' }));
  await page.keyboard.press('Enter');
  const left = column.getByRole('button', { name: /^left wideband, / });
  await expect(left).toBeVisible();
  const before = await pathShown(page, 'left wideband');

  // With the speaker selected, the drawing's arrow keys move it along its panel.
  await tabTo(page, page.getByRole('application', { name: 'Drawing of the car' }), 'Shift+Tab');
  for (let i = 0; i < 4; i++) await page.keyboard.press('Shift+ArrowRight');
  await expect.poll(() => pathShown(page, 'left wideband')).not.toBe(before);
  const after = await pathShown(page, 'left wideband');
  for (let i = 0; i < 4; i++) await page.keyboard.press('Control+z');
  await expect.poll(() => pathShown(page, 'left wideband')).toBe(before);
  for (let i = 0; i < 4; i++) await page.keyboard.press('Control+Shift+z');
  await expect.poll(() => pathShown(page, 'left wideband')).toBe(after);

  await page.waitForTimeout(600);
  await reopen(page);
  await expect.poll(() => pathShown(page, 'left wideband')).toBe(after);

  await tabTo(page, page.getByRole('button', { name: 'Export…' }));
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog');
  const save = dialog.getByRole('button', { name: 'Save file' });
  await tabTo(page, save);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.keyboard.press('Enter'),
  ]);
  expect(await textOf(download)).toContain('wideband');
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();

  await tabTo(page, page.getByRole('button', { name: 'Plans…' }), 'Shift+Tab');
  await page.keyboard.press('Enter');
  await tabTo(page, page.getByRole('dialog').getByRole('button', { name: 'Open a file' }));
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.keyboard.press('Enter'),
  ]);
  const text = JSON.stringify(demoPlan());
  await chooser.setFiles({
    name: 'cut-off.json',
    mimeType: 'application/json',
    buffer: Buffer.from(text.slice(0, text.length / 2)),
  });
  await expect(
    page
      .getByRole('alert')
      .or(page.getByRole('dialog'))
      .getByText(/JSON|cut/i)
      .first(),
  ).toBeVisible();
  await page.keyboard.press('Escape');
  expect(await pathShown(page, 'left wideband')).toBe(after);
});
