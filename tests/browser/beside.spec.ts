import type { Page } from '@playwright/test';
import { findings } from './axe';
import { carDrawn, pathShown, undoButton } from './board';
import { expect, openFresh, test } from './support';

interface Point {
  x: number;
  y: number;
}

const canvasOf = (page: Page) => page.locator('.scene-canvas');
const choice = (page: Page) => page.getByLabel('Beside it');
const halves = (page: Page) => page.locator('.scene-half');
/** Words over the half on the board (0) and over the one beside it (1). */
const wordsOn = (page: Page, half: 0 | 1) => page.locator('.scene-overlay').nth(half);

/** Until no frame has been drawn for a while. */
async function atRest(page: Page): Promise<void> {
  let last: string | null = null;
  await expect
    .poll(
      async () => {
        const before = last;
        last = await canvasOf(page).getAttribute('data-scene-frames');
        return last === before;
      },
      { intervals: [600], timeout: 20_000 },
    )
    .toBe(true);
}

/** Where a speaker's mark stands within a half, CSS pixels from its top left corner. */
const markIn = (page: Page, half: 0 | 1, id: string): Promise<Point> =>
  wordsOn(page, half).evaluate((sheet, speaker) => {
    const mark = sheet.querySelector(`[data-speaker="${speaker}"]`);
    if (!mark) throw new Error(`no mark of ${speaker}`);
    const [box, own] = [sheet.getBoundingClientRect(), mark.getBoundingClientRect()];
    return { x: own.left + own.width / 2 - box.left, y: own.top + own.height / 2 - box.top };
  }, id);

/** The same on the page. */
async function markOnPage(page: Page, half: 0 | 1, id: string): Promise<Point> {
  const box = await wordsOn(page, half).boundingBox();
  const at = await markIn(page, half, id);
  if (!box) throw new Error('the half has no place');
  return { x: box.x + at.x, y: box.y + at.y };
}

const apart = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

/** The two halves as drawn, without words. */
async function pictures(page: Page): Promise<{ board: Buffer; beside: Buffer }> {
  await atRest(page);
  const opacity = (value: string) =>
    page.locator('.scene-overlay').evaluateAll((sheets, to) => {
      for (const sheet of sheets) (sheet as HTMLElement).style.opacity = to;
    }, value);
  await opacity('0');
  const [board, beside] = await Promise.all(
    ([0, 1] as const).map(async (half) => (await wordsOn(page, half).boundingBox()) ?? undefined),
  );
  const taken = {
    board: await page.screenshot({ clip: board }),
    beside: await page.screenshot({ clip: beside }),
  };
  await opacity('');
  return taken;
}

/**
 * How many colours each of two pictures of one size has, and how many of their pixels differ
 * within `reach` of the places given.
 */
async function compared(
  page: Page,
  { board, beside }: { board: Buffer; beside: Buffer },
  near: readonly Point[],
  reach: number,
) {
  const reader = await page.context().newPage();
  try {
    return await reader.evaluate(
      async ({ pngs, near, reach }) => {
        const [a, b] = await Promise.all(
          pngs.map(async (base64) => {
            const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
            const picture = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
            const canvas = new OffscreenCanvas(picture.width, picture.height);
            const pen = canvas.getContext('2d');
            if (!pen) throw new Error('no pen');
            pen.drawImage(picture, 0, 0);
            return pen.getImageData(0, 0, picture.width, picture.height);
          }),
        );
        if (!a || !b || a.width !== b.width || a.height !== b.height)
          throw new Error('the halves are not of one size');
        const colours = [a, b].map(({ data }) => new Set(new Uint32Array(data.buffer)).size);
        let differing = 0;
        for (let i = 0; i < a.width * a.height; i++) {
          const [x, y] = [i % a.width, Math.floor(i / a.width)];
          if (!near.some((p) => Math.hypot(p.x - x, p.y - y) <= reach)) continue;
          const off = [0, 1, 2].some(
            (k) => Math.abs((a.data[4 * i + k] ?? 0) - (b.data[4 * i + k] ?? 0)) > 40,
          );
          if (off) differing++;
        }
        return { colours, differing };
      },
      { pngs: [board.toString('base64'), beside.toString('base64')], near, reach },
    );
  } finally {
    await reader.close();
  }
}

async function openBeside(page: Page, title: string): Promise<void> {
  await choice(page).selectOption({ label: `Beside it: ${title}` });
  await expect(halves(page)).toHaveCount(2);
  await atRest(page);
}

test('a copy is drawn beside what it was made from, and differs where a pair was moved', async ({
  page,
}) => {
  test.setTimeout(180_000);
  await openFresh(page);
  await carDrawn(page);
  await page.getByRole('button', { name: 'Copy Mids on the pillars' }).click();
  await openBeside(page, 'Mids on the pillars');
  await expect(
    page.getByRole('heading', { name: 'Mids on the pillars (copy)', exact: true }),
  ).toBeVisible();
  await expect(
    page.getByRole('heading', { name: 'Mids on the pillars', exact: true }),
  ).toBeVisible();

  const moved = ['midbass-left', 'midbass-right'];
  const marks = async (half: 0 | 1) => Promise.all(moved.map((id) => markIn(page, half, id)));
  const stood = await marks(0);
  expect(await marks(1)).toEqual(stood);
  const alike = await compared(page, await pictures(page), stood, 25);
  for (const colours of alike.colours) expect(colours).toBeGreaterThan(16);

  await page.getByRole('button', { name: /^left midbass, / }).click();
  await canvasOf(page).focus();
  for (let i = 0; i < 6; i++) await page.keyboard.press('Shift+ArrowRight');
  for (const [i, id] of moved.entries()) {
    const from = stood[i] as Point;
    await expect.poll(async () => apart(await markIn(page, 0, id), from)).toBeGreaterThan(10);
  }
  await atRest(page);
  const now = await marks(0);
  expect(await marks(1)).toEqual(stood);
  await page.getByRole('button', { name: 'Whole car' }).click();
  const changed = await compared(page, await pictures(page), [...now, ...stood], 25);
  for (const colours of changed.colours) expect(colours).toBeGreaterThan(16);
  expect(changed.differing).toBeGreaterThan(alike.differing + 200);
});

test('turning, zooming and the views move both halves; only the left one is worked on', async ({
  page,
}) => {
  test.setTimeout(180_000);
  await openFresh(page);
  await carDrawn(page);
  await openBeside(page, 'Mids in the kick panels');
  const both = async (id: string) => {
    await atRest(page);
    const [a, b] = [await markIn(page, 0, id), await markIn(page, 1, id)];
    // The tweeters stand where they are in both options.
    expect(apart(a, b)).toBeLessThan(0.01);
    return a;
  };
  const start = await both('tweeter-right');

  // On a speaker of the other half: it stays, and the car turns.
  const path = await pathShown(page, 'right tweeter');
  const hold = await markOnPage(page, 1, 'tweeter-right');
  await page.mouse.move(hold.x, hold.y);
  await page.mouse.down();
  await page.mouse.move(hold.x - 60, hold.y + 20, { steps: 4 });
  await page.mouse.up();
  const turned = await both('tweeter-right');
  expect(apart(turned, start)).toBeGreaterThan(10);
  expect(await pathShown(page, 'right tweeter')).toBe(path);
  await expect(undoButton(page)).toBeDisabled();

  // What is under the pointer stays under it, in either half.
  for (const half of [0, 1] as const) {
    const before = await both('midbass-left');
    const other = await both('tweeter-right');
    const under = await markOnPage(page, half, 'midbass-left');
    await page.mouse.move(under.x, under.y);
    await page.mouse.wheel(0, -120);
    const after = await both('midbass-left');
    expect(apart(after, before), `half ${half}`).toBeLessThan(4);
    expect(apart(await both('tweeter-right'), other)).toBeGreaterThan(2);
  }

  await page.getByRole('button', { name: 'Side', exact: true }).click();
  await expect(canvasOf(page)).toHaveAttribute('data-scene-view', 'side');
  await both('tweeter-left');

  // A drag on the left moves that option alone.
  const from = await markOnPage(page, 0, 'midbass-left');
  const stays = await markIn(page, 1, 'midbass-left');
  const was = await pathShown(page, 'left midbass');
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  const idle = await pictures(page);
  await page.mouse.move(from.x + 30, from.y + 8, { steps: 6 });
  await expect.poll(() => pathShown(page, 'left midbass')).not.toBe(was);
  const held = await pictures(page);
  expect(held.board.equals(idle.board)).toBe(false);
  expect(held.beside.equals(idle.beside)).toBe(true);
  await page.mouse.up();
  await expect.poll(() => pathShown(page, 'left midbass')).not.toBe(was);
  await atRest(page);
  expect(apart(await markIn(page, 0, 'midbass-left'), stays)).toBeGreaterThan(10);
  expect(await markIn(page, 1, 'midbass-left')).toEqual(stays);
  const { colours } = await compared(page, await pictures(page), [], 0);
  for (const many of colours) expect(many).toBeGreaterThan(16);
  await undoButton(page).click();
  await expect.poll(() => pathShown(page, 'left midbass')).toBe(was);

  // A seat that slides changes the ways of both; the other's are worked out when it stands still.
  await page.getByRole('button', { name: 'Whole car' }).click();
  await page.getByRole('button', { name: 'Adjust the front left seat' }).click();
  const said = page.getByText('Follows when you let go');
  await expect(said).toBeHidden();
  const ways = () => halves(page).nth(1).getByRole('listitem').allTextContents();
  const before = await ways();
  await canvasOf(page).focus();
  await page.keyboard.down('Shift');
  await page.keyboard.down('ArrowUp');
  await expect(said).toBeVisible();
  await page.keyboard.up('ArrowUp');
  await page.keyboard.up('Shift');
  await expect(said).toBeHidden();
  await expect.poll(ways).not.toEqual(before);
});

test('by keyboard: open beside, change places, close; and without a violation of accessibility', async ({
  page,
}) => {
  test.setTimeout(180_000);
  await openFresh(page);
  await carDrawn(page);
  await choice(page).focus();
  await page.keyboard.press('ArrowDown');
  await expect(halves(page)).toHaveCount(2);
  const region = (name: string) => page.getByRole('region', { name, exact: true });
  await expect(region('Mids in the kick panels')).toContainText(/left mid: \d+ mm, blocked/);
  await expect(region('Mids on the pillars')).toContainText(/left mid: \d+ mm/);
  await atRest(page);
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await atRest(page);
    expect(await findings(page), colorScheme).toEqual([]);
  }
  // The drawing comes first, then what may be done with its second half.
  await canvasOf(page).focus();
  await page.keyboard.press('2');
  await expect(canvasOf(page)).toHaveAttribute('data-scene-view', 'plan');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'Put on the board' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(halves(page).nth(0).getByRole('heading')).toHaveText('Mids in the kick panels');
  await expect(halves(page).nth(1).getByRole('heading')).toHaveText('Mids on the pillars');
  await expect(page.getByRole('radio', { name: /^Mids in the kick panels/ })).toBeChecked();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(halves(page)).toHaveCount(0);
  await expect(canvasOf(page)).toBeFocused();
  await expect(choice(page)).toHaveValue('');

  // An option that is gone is not drawn.
  await openBeside(page, 'Mids on the pillars');
  await page.getByRole('radio', { name: /^Mids on the pillars/ }).check({ force: true });
  await expect(halves(page)).toHaveCount(0);
  await openBeside(page, 'Mids in the kick panels');
  await page.getByRole('button', { name: 'Remove Mids on the pillars' }).click();
  await expect(halves(page)).toHaveCount(0);
  await expect(choice(page)).toHaveCount(0);
});

test('fault 19: both halves come back the same after ten lost contexts, on a tall page too', async ({
  page,
  misdeeds,
}) => {
  test.setTimeout(180_000);
  await page.setViewportSize({ width: 768, height: 1024 });
  await openFresh(page);
  await carDrawn(page);
  await openBeside(page, 'Mids in the kick panels');
  await expect(page.locator('.scene')).toHaveAttribute('data-halves', 'down');
  await atRest(page);
  const canvas = canvasOf(page);
  // Without the words: they are not lost with the context, and their edges may be smoothed anew.
  const before = await pictures(page);
  for (let i = 0; i < 10; i++) {
    await canvas.evaluate(async (element: HTMLCanvasElement) => {
      const loss = element.getContext('webgl2')?.getExtension('WEBGL_lose_context');
      if (!loss) throw new Error('no way to lose the context');
      const told = (what: string) =>
        new Promise((done) => element.addEventListener(what, done, { once: true }));
      const lost = told('webglcontextlost');
      loss.loseContext();
      await lost;
      const back = told('webglcontextrestored');
      await new Promise((done) => setTimeout(done, 30));
      loss.restoreContext();
      await back;
    });
  }
  const after = await pictures(page);
  expect(after.board.equals(before.board)).toBe(true);
  expect(after.beside.equals(before.beside)).toBe(true);
  misdeeds.errors = misdeeds.errors.filter((error) => !/context lost/i.test(error));

  const frames = await canvas.getAttribute('data-scene-frames');
  await page.waitForTimeout(1500);
  expect(await canvas.getAttribute('data-scene-frames')).toBe(frames);
});
