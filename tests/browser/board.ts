/** How the browser tests take hold of the page: by the words and roles a user meets. */
import { readFile } from 'node:fs/promises';
import { type Download, expect, type Page } from '@playwright/test';

/** Files go through the browser's plain download and upload, which a test can reach. */
export async function withPlainFiles(page: Page): Promise<void> {
  // Listening from the start: a window asked for at the moment listening begins can be missed.
  page.on('filechooser', () => undefined);
  await page.addInitScript(() => {
    Reflect.deleteProperty(window, 'showOpenFilePicker');
    Reflect.deleteProperty(window, 'showSaveFilePicker');
  });
}

/** Waits for the first drawn frame of the car. */
export async function carDrawn(page: Page): Promise<void> {
  await expect(page.locator('html')).toHaveAttribute('data-scene-ready', 'true', {
    timeout: 30_000,
  });
}

/** Where a speaker stands on the screen, as its label's anchor says, once the view has settled. */
export async function speakerOnScreen(page: Page, id: string): Promise<{ x: number; y: number }> {
  const anchor = page.locator(`[data-speaker="${id}"]`).first();
  await expect(anchor).toBeAttached();
  const place = () =>
    anchor.evaluate((element) => {
      const box = element.getBoundingClientRect();
      return { x: box.left, y: box.top };
    });
  let last = { x: Number.NaN, y: Number.NaN };
  await expect
    .poll(
      async () => {
        const before = last;
        last = await place();
        return Math.hypot(last.x - before.x, last.y - before.y);
      },
      { intervals: [700], timeout: 20_000 },
    )
    .toBe(0);
  return last;
}

/** The path of a speaker in mm, as the list of speakers shows it. */
export async function pathShown(page: Page, name: string): Promise<number> {
  const button = page
    .getByRole('region', { name: 'Options and speakers' })
    .getByRole('button', { name: new RegExp(`^${name}, `) });
  const said = (await button.getAttribute('aria-label')) ?? (await button.textContent()) ?? '';
  const number = /(\d[\d.]*)\s*(?:mm)?\s*$/.exec(said.trim())?.[1];
  expect(number, `a number at the end of “${said}”`).toBeTruthy();
  return Number(number);
}

/** The text of a downloaded file. */
export async function textOf(download: Download): Promise<string> {
  return readFile(await download.path(), 'utf8');
}

export const undoButton = (page: Page) => page.getByRole('button', { name: /^Undo/ });
export const redoButton = (page: Page) => page.getByRole('button', { name: /^Redo/ });
