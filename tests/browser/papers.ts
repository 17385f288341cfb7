/** How the browser tests take hold of the papers. */
import { expect, type Page } from '@playwright/test';
import type { Plan } from './engine';
import { type PdfPage, readPdf } from './pdf';

export interface PaperChoice {
  paper?: 'customer' | 'book';
  size?: 'A4' | 'Letter';
  language?: 'en' | 'de';
  lengths?: 'mm' | 'in';
}

const room = (page: Page) => page.getByRole('complementary', { name: 'On paper' });

/** Goes to the papers, where not there yet, and chooses what is printed. */
export async function choosePaper(page: Page, choice: PaperChoice): Promise<void> {
  if (!(await room(page).isVisible()))
    await page.getByRole('button', { name: 'On paper…' }).click();
  const choose = (label: string, value: string | undefined) =>
    value === undefined
      ? Promise.resolve()
      : room(page)
          .getByLabel(label, { exact: true })
          .selectOption(value)
          .then(() => undefined);
  await choose('Paper', choice.paper);
  await choose('Page size', choice.size);
  await choose('Language of the paper', choice.language);
  await choose('Lengths', choice.lengths);
  await laidOut(page);
}

/** Opens a plan as from a file; the page takes plain files (`withPlainFiles`). */
export async function openPlan(page: Page, plan: Plan): Promise<void> {
  await page.getByRole('button', { name: 'Plans…' }).click();
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('dialog').getByRole('button', { name: 'Open a file' }).click(),
  ]);
  await chooser.setFiles({
    name: 'plan.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(plan)),
  });
  await expect(page).toHaveTitle(new RegExp(plan.title));
  if (await page.getByRole('dialog').isVisible()) await page.keyboard.press('Escape');
}

/** The pages stand: laid out, and of the title they should have. */
export async function laidOut(page: Page): Promise<void> {
  await expect(page.locator('.flow .page').first()).toBeVisible({ timeout: 30_000 });
}

/** What the browser prints, read back. */
export async function printed(page: Page): Promise<PdfPage[]> {
  return readPdf(await page.pdf({ preferCSSPageSize: true, printBackground: true }));
}

/** Everything on the pages that reaches over its page's edge or is taller than it: nothing, that is. */
export function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('.flow .page')].flatMap((sheet, number) => {
      const content = sheet.querySelector('.page-content');
      const foot = sheet.querySelector('.page-foot');
      if (!content) return [`page ${number + 1} has no content`];
      const right = content.getBoundingClientRect().right + 1;
      const bottom = (foot ?? sheet).getBoundingClientRect().top + (foot ? 0 : 1e6);
      return [
        ...content.querySelectorAll('tr, p, h1, h2, h3, figure, li, svg:not(svg svg)'),
      ].flatMap((part) => {
        const box = part.getBoundingClientRect();
        const over = box.bottom > bottom || box.right > right;
        return over ? [`page ${number + 1}: ${part.textContent?.slice(0, 40)}`] : [];
      });
    }),
  );
}
