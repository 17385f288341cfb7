/** What every browser test needs: a fresh page that may do nothing it should not. */
import { test as base, expect, type Page } from '@playwright/test';

export { expect };

/** Everything a page did that it must not do. */
export interface Misdeeds {
  /** Errors written to the console or thrown by the page. */
  errors: string[];
  /** Requests to any other origin. */
  foreign: string[];
  /** Refusals by the content policy. */
  violations: string[];
}

interface Fixtures {
  /** What the page has done wrong so far; the test fails at its end when anything is left here. */
  misdeeds: Misdeeds;
}

/**
 * A test whose page is watched: it fails on a console error, a request to another origin or a
 * content policy violation. A test that provokes one clears the list when it has looked at it.
 */
export const test = base.extend<Fixtures>({
  misdeeds: [
    async ({ page, baseURL }, use) => {
      const misdeeds = await watch(page, baseURL ?? '');
      await use(misdeeds);
      expect(misdeeds).toEqual({ errors: [], foreign: [], violations: [] });
    },
    { auto: true },
  ],
});

async function watch(page: Page, address: string): Promise<Misdeeds> {
  const misdeeds: Misdeeds = { errors: [], foreign: [], violations: [] };
  const { origin } = new URL(address);
  page.on('console', (message) => {
    if (message.type() === 'error') misdeeds.errors.push(message.text());
  });
  page.on('pageerror', (error) => misdeeds.errors.push(String(error.stack ?? error)));
  page.on('request', (request) => {
    const url = new URL(request.url());
    const own = ['data:', 'blob:'].includes(url.protocol) || url.origin === origin;
    if (!own) misdeeds.foreign.push(request.url());
  });
  await page.exposeFunction('tellViolation', (what: string) => misdeeds.violations.push(what));
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      const tell = (window as unknown as { tellViolation(what: string): void }).tellViolation;
      tell(`${event.violatedDirective} refused ${event.blockedURI || 'inline'} (${event.sample})`);
    });
  });
  return misdeeds;
}

/**
 * Opens the page as on the very first visit (each test has its own empty storage) and waits until
 * it is ready.
 */
export async function openFresh(page: Page): Promise<void> {
  await page.goto('./');
  await waitUntilReady(page);
}

/** Loads the page again, keeping its storage. */
export async function reopen(page: Page): Promise<void> {
  await page.reload();
  await waitUntilReady(page);
}

/** Ready: the numbers stand. The drawing may follow; see {@link waitForDrawing}. */
export async function waitUntilReady(page: Page): Promise<void> {
  await expect(page.getByRole('main')).toBeVisible();
  await expect(page.getByRole('table').first()).toBeVisible();
}

/** Waits until the scene has drawn something: a canvas that is not of one colour. */
export async function waitForDrawing(page: Page): Promise<void> {
  const canvas = page.locator('canvas').first();
  await expect(canvas).toBeVisible({ timeout: 30_000 });
  await expect
    .poll(async () => distinctColours(await canvas.screenshot(), page), { timeout: 30_000 })
    .toBeGreaterThan(16);
}

/** Counts the colours of a picture (as PNG), read by a page of its own so no policy is in the way. */
async function distinctColours(png: Buffer, page: Page): Promise<number> {
  const reader = await page.context().newPage();
  try {
    return await reader.evaluate(async (base64) => {
      const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
      const picture = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
      const canvas = new OffscreenCanvas(picture.width, picture.height);
      const context = canvas.getContext('2d');
      if (!context) return 0;
      context.drawImage(picture, 0, 0);
      const { data } = context.getImageData(0, 0, picture.width, picture.height);
      return new Set(new Uint32Array(data.buffer)).size;
    }, png.toString('base64'));
  } finally {
    await reader.close();
  }
}
