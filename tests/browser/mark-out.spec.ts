/** The mark-out sheet as it is printed: nothing that warns is cut off. */
import { produce } from 'immer';
import { demoPlan } from '../../src/plan/demo';
import { mountSpeaker } from '../../src/plan/edits';
import { withPlainFiles } from './board';
import { evaluatePlan } from './engine';
import { openPlan } from './papers';
import { expect, openFresh, test } from './support';

/** Pillar tweeters in the curtain airbag, and a zone marked by hand on one side. */
function planWith(wheelSide: 'left' | 'right') {
  let plan = demoPlan();
  for (const side of ['left', 'right'] as const)
    plan = produce(
      plan,
      mountSpeaker('a', `tweeter-${side}`, {
        panel: `pillar-${side}`,
        u: 0.5,
        v: 0.9,
        standoff: 15,
      }),
    );
  const answer = evaluatePlan(plan);
  const placed = answer.ok ? (answer.options[0]?.placed ?? []) : [];
  const center = placed.find(({ speaker }) => speaker === 'tweeter-left')?.position;
  if (!center) throw new Error('the left tweeter stands nowhere');
  const name = 'loom-and-sunroof-drain-behind-the-trim-of-the-pillar-as-found';
  return {
    ...plan,
    title: `Wheel on the ${wheelSide}`,
    cabin: { ...plan.cabin, wheelSide },
    keepClear: [
      { id: name, reason: '', shape: 'box' as const, center, size: [80, 80, 80] as const },
    ],
  };
}

test('warnings and words on templates are whole, with the wheel on either side, in both languages', async ({
  page,
}) => {
  await withPlainFiles(page);
  await openFresh(page);
  for (const wheelSide of ['left', 'right'] as const) {
    await openPlan(page, planWith(wheelSide));
    await page.getByRole('button', { name: 'On paper…' }).click();
    await page.getByLabel('Paper', { exact: true }).selectOption({ label: 'Mark-out sheet' });
    for (const language of ['en', 'de']) {
      await page.getByLabel('Language of the paper').selectOption(language);
      const warnings = page.locator('.flow .template-warning');
      await expect(warnings.first()).toContainText(language === 'en' ? 'Keep clear' : 'Freihalten');
      await expect(warnings).toHaveCount(2);
      const cut = await page.locator('.flow .template-page').evaluateAll((pages) =>
        pages.flatMap((sheet) => {
          const words = [...sheet.querySelectorAll('.template-warning, .template-head')];
          const foot = sheet.querySelector('.template-foot')?.getBoundingClientRect();
          const ruler = sheet.querySelector('[data-ruler="across"]')?.parentElement;
          const below = ruler?.getBoundingClientRect().bottom ?? Infinity;
          return [
            ...words
              .filter((one) => one.scrollHeight > one.clientHeight + 1)
              .map((one) => `${one.scrollHeight} > ${one.clientHeight}: ${one.textContent}`),
            ...(foot && foot.top < below ? [`foot at ${foot.top}, ruler to ${below}`] : []),
          ];
        }),
      );
      expect(cut, `wheel on the ${wheelSide}, ${language}`).toEqual([]);
    }
    await page.getByRole('button', { name: 'Back to the board' }).click();
  }
});
