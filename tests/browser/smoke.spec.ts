import { expect, openFresh, test, waitForDrawing } from './support';

test('the first start shows the demo with its numbers', async ({ page }) => {
  await openFresh(page);
  await expect(page).toHaveTitle(/Earpath/);
  await expect(page.getByRole('table').first()).toContainText(/\d/);
});

test('the car is drawn', async ({ page }) => {
  await openFresh(page);
  await waitForDrawing(page);
});

test('fault 23: the built page carries its content policy, by header and in itself', async ({
  page,
}) => {
  const response = await page.goto('./');
  const policy =
    "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self' blob:; " +
    "img-src 'self' data: blob:; connect-src 'self' blob: data:; object-src 'none'; " +
    "base-uri 'none'; form-action 'none'";
  expect(response?.headers()['content-security-policy']).toBe(policy);
  const meta = page.locator('meta[http-equiv="Content-Security-Policy"]');
  await expect(meta).toHaveAttribute('content', policy);
});

test('fault 23: the watch itself works: a foreign request and an inline script are noticed', async ({
  page,
  misdeeds,
}) => {
  await openFresh(page);
  await page.evaluate(async () => {
    await fetch('https://elsewhere.invalid/').catch(() => {});
    const script = document.createElement('script');
    script.textContent = 'window.wrong = true';
    document.head.append(script);
  });
  await expect.poll(() => misdeeds.violations.length).toBeGreaterThanOrEqual(2);
  expect(misdeeds.violations.join('\n')).toContain('elsewhere.invalid');
  expect(await page.evaluate(() => 'wrong' in window)).toBe(false);
  misdeeds.errors.length = 0;
  misdeeds.violations.length = 0;
  misdeeds.foreign.length = 0;
});

test('the dimensions worth measuring are worked out in a worker of the page', async ({ page }) => {
  await openFresh(page);
  expect(page.workers()).toHaveLength(0);
  await page.getByRole('button', { name: 'New car…' }).click();
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /measure/i })
    .click();
  await expect(page.getByRole('dialog').getByRole('textbox').first()).toBeVisible();
  expect(page.workers().map((worker) => new URL(worker.url()).pathname)).toEqual([
    expect.stringMatching(/engine\.worker/),
  ]);
});
