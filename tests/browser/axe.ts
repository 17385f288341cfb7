import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';

const axeSource = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** Axe's findings, one line each: which rule, where. */
export async function findings(page: Page): Promise<string[]> {
  // The content policy allows no inline script; evaluate runs outside it.
  await page.evaluate(readFileSync(axeSource, 'utf8'));
  return page.evaluate(async () => {
    const axe = (window as unknown as { axe: { run(): Promise<AxeAnswer> } }).axe;
    interface AxeAnswer {
      passes: unknown[];
      violations: { id: string; nodes: { html: string }[] }[];
    }
    const { violations, passes } = await axe.run();
    if (passes.length < 10) return [`axe looked at too little: ${passes.length} rules passed`];
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
  });
}
