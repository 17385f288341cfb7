import { produce } from 'immer';
import { planToFragment } from '../../src/exchange';
import { demoPlan } from '../../src/plan/demo';
import { setTitle } from '../../src/plan/edits';
import { expect, openFresh, reopen, test, waitUntilReady } from './support';

function fragment(title: string): string {
  const made = planToFragment(produce(demoPlan(), setTitle(title)));
  if (!made.ok) throw new Error('the demo fits into a link');
  return made.fragment;
}

test('a plan goes out as a link and comes in by it, to be looked at until a copy is kept: by keyboard', async ({
  page,
}) => {
  await openFresh(page);
  const title = page.getByRole('textbox', { name: 'Title of the plan' });
  await title.fill('My own car');
  await title.press('Enter');
  // Out: made with the keyboard alone, and nothing is asked of anybody for it.
  await page.getByRole('button', { name: 'Plans…' }).press('Enter');
  await expect(page.getByRole('listitem').filter({ hasText: 'My own car' })).toContainText(
    'open now',
  );
  await page.getByRole('button', { name: 'Make a link' }).press('Enter');
  const link = page.getByRole('textbox', { name: 'Link that carries this plan' });
  await expect(link).toHaveValue(/#plan=1\.[\w-]+$/);
  const own = await link.inputValue();
  expect(own.startsWith(new URL(page.url()).origin)).toBe(true);

  // In: another plan's link in the same window.
  const other = fragment('The car of a friend');
  await page
    .getByRole('textbox', { name: 'Open a link' })
    .fill(`http://elsewhere.example/${other}.`);
  await page.getByRole('textbox', { name: 'Open a link' }).press('Enter');
  await expect(title).toHaveValue('The car of a friend');
  await expect(title).toHaveAttribute('readonly', '');
  await page.getByRole('button', { name: 'Back to your plan' }).press('Enter');
  await expect(title).toHaveValue('My own car');
  await expect(title).not.toHaveAttribute('readonly', '');

  // The link just made, followed in the address line, is the same plan.
  await page.goto(own);
  await waitUntilReady(page);
  await expect(page.getByText('Looking only')).toBeVisible();
  await expect(title).toHaveValue('My own car');
});

test('a plan from a link is kept as a copy of its own, and a damaged link leaves everything as it is', async ({
  page,
}) => {
  await page.goto(`./${fragment('The car of a friend')}`);
  await waitUntilReady(page);
  const title = page.getByRole('textbox', { name: 'Title of the plan' });
  await expect(title).toHaveValue('The car of a friend');
  await expect(title).toHaveAttribute('readonly', '');
  await page.getByRole('button', { name: 'Keep a copy' }).press('Enter');
  await expect(title).not.toHaveAttribute('readonly', '');
  await expect.poll(() => new URL(page.url()).hash).toBe('');
  await reopen(page);
  await expect(title).toHaveValue('The car of a friend');

  const whole = fragment('Never to be seen');
  const broken = `${whole.slice(0, 300)}${whole[300] === 'A' ? 'B' : 'A'}${whole.slice(301)}`;
  await page.evaluate((hash) => {
    location.hash = hash;
  }, broken);
  const dialog = page.getByRole('dialog', { name: 'That plan was not opened' });
  await expect(dialog).toContainText('The link is damaged: a part of it is missing or changed');
  await page.keyboard.press('Escape');
  await expect(title).toHaveValue('The car of a friend');
  await expect(title).not.toHaveAttribute('readonly', '');
});
