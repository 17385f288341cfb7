import type { Page } from '@playwright/test';
import { demoPlan } from '../../src/plan/demo';
import { findings } from './axe';
import { withPlainFiles } from './board';
import { evaluatePlan, type Plan } from './engine';
import { choosePaper, cutOff, laidOut, openPlan, printed } from './papers';
import type { PdfPage } from './pdf';
import { expect, openFresh, reopen, test } from './support';

const SIZES = { A4: [210, 297], Letter: [215.9, 279.4] } as const;

/** Scale bars: a stroke along with a short one up at either end; their lengths, mm of paper. */
const barsOf = ({ lines }: PdfPage): number[] => {
  const ticks = lines.filter(
    ({ from, to, length }) => Math.abs(from[0] - to[0]) < 0.01 && Math.abs(length - 1.2) < 0.02,
  );
  const ends = (x: number, y: number) =>
    ticks.some(({ from, to }) => [from, to].some(([px, py]) => Math.hypot(px - x, py - y) < 0.05));
  return lines
    .filter(({ from, to, length }) => length > 8 && Math.abs(from[1] - to[1]) < 0.01)
    .filter(({ from, to }) => ends(...from) && ends(...to))
    .map(({ length }) => length);
};

/** Middles of the small circles that mark speakers, mm of paper. */
const speakersOn = ({ outlines }: PdfPage): [number, number][] =>
  outlines
    .filter(({ curved, low, high }) => curved && Math.abs(high[0] - low[0] - 2) < 0.02)
    .filter(({ low, high }) => Math.abs(high[1] - low[1] - 2) < 0.02)
    .map(({ low, high }) => [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2]);

function expectPages(pages: readonly PdfPage[], size: keyof typeof SIZES): void {
  pages.forEach(({ width, height, text }, i) => {
    // Browsers round a page to whole points.
    expect(Math.abs(width - SIZES[size][0])).toBeLessThan(0.4);
    expect(Math.abs(height - SIZES[size][1])).toBeLessThan(0.4);
    expect(text).toContain(`${i + 1} / ${pages.length}`);
    // More than its own head and foot.
    expect(text.length, `page ${i + 1} of ${pages.length}`).toBeGreaterThan(180);
  });
}

/** The demo's option with that many speakers, all of it allowed in a plan whether it fits or not. */
function planWith(count: number): Plan {
  const demo = demoPlan() as Plan & { title: string };
  const [option] = demo.options;
  if (!option) throw new Error('the demo has no option');
  const speakers = Array.from({ length: count }, (_, i) => {
    const one = option.speakers[i % option.speakers.length];
    const round = Math.floor(i / option.speakers.length);
    if (!one?.mount) throw new Error('the demo’s speakers are mounted');
    const mount = { ...one.mount, u: Math.min(0.95, one.mount.u + 0.06 * round) };
    return { ...one, id: `${one.id}-${round}`, pair: `${one.pair}-${round}`, mount };
  });
  return {
    ...demo,
    title: `With ${count} speakers`,
    options: [{ id: 'a', title: 'All', speakers }],
  } as Plan;
}

test('by keys alone from the board to the customer sheet and back, its scale bars true on paper', async ({
  page,
}) => {
  await openFresh(page);
  const button = page.getByRole('button', { name: 'On paper…' });
  await button.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'On paper' })).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'Back to the board' })).toBeFocused();
  await choosePaper(page, { paper: 'customer', size: 'A4', language: 'en' });
  expect(await findings(page)).toEqual([]);
  expect(await cutOff(page)).toEqual([]);

  const pages = await printed(page);
  expectPages(pages, 'A4');
  const [first] = pages as [PdfPage];
  const whole = pages.map(({ text }) => text).join(' ');
  const answer = evaluatePlan(demoPlan());
  if (!answer.ok) throw new Error(answer.error.message);
  const [result] = answer.options;
  const widest = result?.seats[0]?.pairs.find(({ pair }) => pair === 'tweeter');
  expect(whole).toContain(`${Math.abs(widest?.difference ?? 0).toFixed(0)} mm nearer`);
  expect(whole).toContain('The maker’s documents come first');
  expect(whole).toContain('Mids in the kick panels');

  // From above and from the side: as long on paper as the drawing's scale has it.
  const bars = barsOf(first);
  expect(bars).toHaveLength(2);
  const at = (id: string) => result?.placed.find(({ speaker }) => speaker === id)?.position;
  const [left, right] = [at('tweeter-left'), at('tweeter-right')];
  if (!left || !right) throw new Error('the demo has tweeters');
  const apart = right[1] - left[1];
  const length = Number(/(\d+) mm From above/.exec(first.text)?.[1] ?? 1000);
  const found = speakersOn(first).flatMap(([x, y]) =>
    speakersOn(first).filter(
      ([px, py]) =>
        Math.abs(px - x) < 0.05 && Math.abs(py - y - (apart / length) * (bars[0] ?? 0)) < 0.1,
    ),
  );
  expect(found.length).toBeGreaterThan(0);

  await page.keyboard.press('Escape');
  await expect(button).toBeFocused();
  await expect(page.getByRole('main', { name: 'The car' })).toBeVisible();
});

test('fault 24: none, one and forty speakers on A4 and Letter, no row cut and no page empty', async ({
  page,
}) => {
  test.setTimeout(150_000);
  await withPlainFiles(page);
  await openFresh(page);
  for (const count of [0, 1, 40]) {
    await openPlan(page, planWith(count));
    for (const paper of ['customer', 'book'] as const) {
      for (const size of ['A4', 'Letter'] as const) {
        await choosePaper(page, { paper, size, language: 'en' });
        expect(await cutOff(page), `${count} speakers, ${paper}, ${size}`).toEqual([]);
        const pages = await printed(page);
        expectPages(pages, size);
        const whole = pages.map(({ text }) => text).join(' ');
        if (count === 0) expect(whole).toContain('No speaker stands in this option yet.');
        else expect(whole).toContain('Left tweeter');
        // The last of forty: nothing was lost on the way.
        if (count === 40) expect(whole).toMatch(/Right mid 7\b/);
      }
    }
    await page.getByRole('button', { name: 'Back to the board' }).click();
  }
});

/** 40 × 30 px, all of one colour. */
async function picture(page: Page): Promise<Buffer> {
  const address = await page.evaluate(() => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [40, 30];
    const context = canvas.getContext('2d');
    if (context) {
      context.fillStyle = 'teal';
      context.fillRect(0, 0, 40, 30);
    }
    return canvas.toDataURL('image/png');
  });
  return Buffer.from(address.split(',')[1] ?? '', 'base64');
}

test('the build book in German: contents tell the right pages, and pictures stay with the plan', async ({
  page,
}) => {
  await openFresh(page);
  const title = page.getByRole('textbox', { name: 'Title of the plan' });
  await title.fill('Kombi von Anna');
  await title.press('Enter');
  await choosePaper(page, { paper: 'book', size: 'A4', language: 'de' });
  await page.getByLabel('Add JPEG, PNG or WebP').setInputFiles([
    { name: 'pod.png', mimeType: 'image/png', buffer: await picture(page) },
    { name: 'plan.txt', mimeType: 'text/plain', buffer: Buffer.from('no picture') },
  ]);
  await expect(page.getByRole('alert')).toContainText('“plan.txt”: expected a JPEG, PNG or WebP');
  await page.getByLabel('Caption of picture 1').fill('Gehäuse links');
  await expect(page.locator('.flow').getByText('Bild 1: Gehäuse links')).toBeVisible();

  await page.getByText('Your shop on the page').click();
  await page.getByLabel('Name', { exact: true }).fill('Werkstatt Süd');
  const logo = { name: 'logo.png', mimeType: 'image/png', buffer: await picture(page) };
  await page.getByLabel('Logo, as PNG').setInputFiles([logo]);
  await expect(page.locator('.page-shop img').first()).toBeVisible();

  const pages = await printed(page);
  expectPages(pages, 'A4');
  expect(pages.filter(({ text }) => text.includes('Werkstatt Süd'))).toHaveLength(pages.length);
  const contents = pages[0]?.text ?? '';
  const chapters = ['Die Anlage', 'Wann der Schall ankommt', 'Bilder', 'Bevor geschnitten wird'];
  for (const chapter of chapters) {
    const number = Number(new RegExp(`${chapter}\\s+(\\d+)`).exec(contents)?.[1]);
    expect(pages[number - 1]?.text, `${chapter} on page ${number}`).toContain(chapter);
    expect(number).toBeGreaterThan(1);
  }
  const whole = pages.map(({ text }) => text).join(' ');
  expect(whole).toContain('Bild 1: Gehäuse links');
  expect(whole).toMatch(/\d,\d\d\sms/);
  expect(whole).not.toMatch(/\d\.\d\d\sms/);
  expect(whole).toContain('Im Auto wurde noch nichts gemessen.');

  await reopen(page);
  await choosePaper(page, { paper: 'book' });
  await expect(page.getByLabel('Caption of picture 1')).toHaveValue('Gehäuse links');
  await laidOut(page);
  await expect(page.locator('.flow').getByText('Bild 1: Gehäuse links')).toBeVisible();
});
