/** Rings and marks: saved as files and printed; every number is the engine's own. */
import { readFile } from 'node:fs/promises';
import type { Download, Page } from '@playwright/test';
import { strFromU8, unzipSync } from 'fflate';
import { produce } from 'immer';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { evaluatePlan, markOut, meshVolume, ringOfSpeaker, type Vec3 } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { mountSpeaker, type PlanRecipe, setRing } from '../../src/plan/edits';
import { findings } from './axe';
import { undoButton, withPlainFiles } from './board';
import { readPdf } from './pdf';
import { expect, openFresh, test } from './support';

function boardWith(...recipes: PlanRecipe[]) {
  const plan = recipes.reduce((so, recipe) => produce(so, recipe), demoPlan());
  const answer = evaluatePlan(plan);
  const [option, result] = [plan.options[0], answer.ok ? answer.options[0] : null];
  if (!answer.ok || !option || !result) throw new Error('the demo is refused');
  return { cabin: answer.cabin, option, result };
}

function ringIn({ option, result }: ReturnType<typeof boardWith>, id: string) {
  const speaker = option.speakers.find((one) => one.id === id);
  const placed = result.placed.find((one) => one.speaker === id);
  const answer = speaker && placed && ringOfSpeaker(speaker, placed);
  if (!answer?.ok) throw new Error(`there is no ring for ${id}`);
  return answer.ring;
}

const bytesOf = async (download: Download): Promise<Uint8Array> =>
  new Uint8Array(await readFile(await download.path()));

function volumeOfStl(bytes: Uint8Array): number {
  const position = new STLLoader().parse(bytes.slice().buffer).getAttribute('position');
  let six = 0;
  for (let n = 0; n < position.count; n += 3) {
    const [a, b, c] = [0, 1, 2].map(
      (k): Vec3 => [position.getX(n + k), position.getY(n + k), position.getZ(n + k)],
    ) as [Vec3, Vec3, Vec3];
    six +=
      a[0] * (b[1] * c[2] - b[2] * c[1]) +
      a[1] * (b[2] * c[0] - b[0] * c[2]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return six / 6;
}

const sheets = (page: Page) => page.getByRole('toolbar', { name: 'Which numbers' });

test('a pair is put on rings, given its stand-off, and saved as STL and 3MF', async ({ page }) => {
  await withPlainFiles(page);
  await openFresh(page);
  await sheets(page).getByRole('button', { name: 'Ring', exact: true }).click();
  const sheet = page.locator('.ring-sheet');
  await expect(sheet).toContainText('Left tweeter stands without a ring');
  await sheet.getByRole('button', { name: 'Put both on rings' }).click();
  const left = page.getByRole('region', { name: 'Ring of the left tweeter' });
  await expect(left).toContainText(/No ring: [\d.]+ mm more stand-off is wanted/);
  const give = left.getByRole('button', { name: /^Give both [\d.]+ mm of stand-off$/ });
  const standoff = Number(/both ([\d.]+) mm/.exec((await give.textContent()) ?? '')?.[1]);
  await give.click();
  await expect(left).toContainText('Speaker and ring fit, as far as the model knows.');
  await expect(left).toContainText('is over the limit of 30°');

  const on = boardWith(
    setRing('a', 'tweeter-left', {}),
    mountSpeaker('a', 'tweeter-left', { panel: 'pillar-left', u: 0.5, v: 0.45, standoff }),
  );
  const ring = ringIn(on, 'tweeter-left');
  await expect(left.locator('.ring-facts')).toContainText(`wedge${ring.wedgeDeg.toFixed(1)}°`);
  const [stl] = await Promise.all([
    page.waitForEvent('download'),
    left.getByRole('button', { name: 'Save the left tweeter’s ring as STL' }).click(),
  ]);
  expect(stl.suggestedFilename()).toBe('Demo estate ring left tweeter.stl');
  expect(volumeOfStl(await bytesOf(stl)) / meshVolume(ring.mesh)).toBeCloseTo(1, 4);
  const [threeMf] = await Promise.all([
    page.waitForEvent('download'),
    sheet.getByRole('button', { name: 'Save both rings as 3MF' }).click(),
  ]);
  expect(threeMf.suggestedFilename()).toBe('Demo estate ring tweeters.3mf');
  const model = strFromU8(unzipSync(await bytesOf(threeMf))['3D/3dmodel.model'] as Uint8Array);
  expect(model.match(/<object /g)).toHaveLength(2);
  expect(model).toContain('unit="millimeter"');
  await undoButton(page).click();
  await undoButton(page).click();
  await expect(sheet).toContainText('Left tweeter stands without a ring');
});

test('the mark-out sheet is printed with rulers and templates true to 0.1 mm, and a printer that is not is refused', async ({
  page,
}) => {
  await openFresh(page);
  await page.getByRole('button', { name: 'On paper…' }).click();
  await page.getByLabel('Paper', { exact: true }).selectOption({ label: 'Mark-out sheet' });
  await page.getByLabel('Page size').selectOption('A4');
  await expect(page.locator('.flow')).toBeVisible();
  const { cabin, option, result } = boardWith();
  const marks = markOut(cabin, option.speakers, result.placed);

  const pages = await readPdf(await page.pdf({ preferCSSPageSize: true, printBackground: true }));
  const text = pages.map((one) => one.text).join(' ');
  for (const { within95 } of marks)
    expect(text).toContain(`${within95?.toFixed(1)} mm of the spot`);
  const templates = pages.filter((one) => one.text.includes('measured on paper'));
  expect(templates).toHaveLength(6);
  for (const { lines, width, height } of templates) {
    expect(width).toBeCloseTo(210, 0);
    expect(height).toBeCloseTo(297, 0);
    const long = lines.filter(({ length }) => Math.abs(length - 100) < 2);
    const across = long.filter(({ from, to }) => Math.abs(from[1] - to[1]) < 0.01);
    const up = long.filter(({ from, to }) => Math.abs(from[0] - to[0]) < 0.01);
    expect([across.length, up.length]).toEqual([1, 1]);
    for (const { length } of [...across, ...up]) expect(Math.abs(length - 100)).toBeLessThan(0.1);
  }
  // The midbass: its cut-out is 136 mm in the speaker's own drawing.
  const midbass = templates.find((one) => one.text.includes('Left midbass'));
  const round = midbass?.outlines.filter(({ curved }) => curved) ?? [];
  const cutout = round.find(({ low, high }) => Math.abs(high[0] - low[0] - 136) < 0.1);
  expect(cutout && Math.abs(cutout.high[1] - cutout.low[1] - 136)).toBeLessThan(0.1);

  await page.getByLabel('Ruler across, mm').fill('99.2');
  await page.getByLabel('Ruler up the page, mm').fill('100');
  await expect(page.getByText(/^These templates are not to be used/)).toBeVisible();
  await expect(page.getByText('The print is not true: do not use it').first()).toBeVisible();
  await page.getByLabel('Ruler across, mm').fill('abc');
  await expect(page.getByText('Enter both as lengths, such as 99.8 or 3.93 in.')).toBeVisible();
  await page.getByLabel('Ruler across, mm').fill('99,9');
  await expect(page.getByText(/^True enough: −0.10 % across/)).toBeVisible();
});

test('by keyboard: a ring is made, its bore typed, its file saved, and its sheet read in German', async ({
  page,
}) => {
  await withPlainFiles(page);
  await openFresh(page);
  await sheets(page).getByRole('button', { name: 'Times', exact: true }).focus();
  await page.keyboard.press('End');
  await page.keyboard.press('ArrowLeft');
  await expect(sheets(page).getByRole('button', { name: 'Ring', exact: true })).toBeFocused();
  await page.keyboard.press('Enter');
  await page.getByRole('combobox', { name: 'Speakers' }).selectOption({ label: 'Midbasses' });
  await page.getByRole('button', { name: 'Put both on rings' }).focus();
  await page.keyboard.press('Enter');
  const bore = page.getByRole('textbox', { name: 'Bore', exact: true });
  await bore.focus();
  await page.keyboard.type('138,5');
  await page.keyboard.press('Enter');
  const ring = ringIn(boardWith(setRing('a', 'midbass-left', { bore: 138.5 })), 'midbass-left');
  const left = page.getByRole('region', { name: 'Ring of the left midbass' });
  await expect(left.locator('.ring-facts')).toContainText(
    `material${(ring.volume / 1000).toFixed(0)} cm³`,
  );
  expect(await findings(page), 'the sheet of rings').toEqual([]);
  await left.getByRole('button', { name: /as STL$/ }).focus();
  const [stl] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
  expect(volumeOfStl(await bytesOf(stl)) / meshVolume(ring.mesh)).toBeCloseTo(1, 4);
  await page.getByRole('button', { name: 'On paper…' }).focus();
  await page.keyboard.press('Enter');
  await page.getByLabel('Paper', { exact: true }).selectOption({ label: 'Ring sheet' });
  await page.getByLabel('Language of the paper').selectOption({ label: 'Deutsch' });
  await expect(page.locator('.flow')).toContainText('Ring für: Tiefmitteltöner links');
  await expect(page.locator('.flow')).toContainText('138,5');
  expect(await findings(page), 'rings on paper').toEqual([]);
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'On paper…' })).toBeFocused();
});
