import { describe, expect, test } from 'vitest';
import { countPlaywright, countVitest } from './count-results';

const vitest = (
  passed: number,
  failed: number,
  files: { status: string; assertionResults: unknown[] }[] = [],
) => ({
  numPassedTests: passed,
  numFailedTests: failed,
  testResults: files,
});
const playwright = (expected: number, unexpected: number, errors: unknown[] = []) => ({
  stats: { expected, unexpected, flaky: 0, skipped: 0 },
  errors,
});

describe('the closing line', () => {
  test('counts what passed and what failed', () => {
    expect(countVitest(vitest(10, 2), false)).toEqual({ passed: 10, failed: 2 });
    expect(countPlaywright(playwright(7, 1), false)).toEqual({ passed: 7, failed: 1 });
  });

  test('counts a test file that could not be loaded', () => {
    const report = vitest(10, 0, [{ status: 'failed', assertionResults: [] }]);
    expect(countVitest(report, false)).toEqual({ passed: 10, failed: 1 });
  });

  test('never says that all passed when the run ended badly, wrote nothing or tested nothing', () => {
    expect(countVitest(vitest(10, 0), false)).toEqual({ passed: 10, failed: 1 });
    expect(countVitest(null, true)).toEqual({ passed: 0, failed: 1 });
    expect(countVitest(vitest(0, 0), true)).toEqual({ passed: 0, failed: 1 });
    expect(countPlaywright(playwright(3, 0, [{}]), false)).toEqual({ passed: 3, failed: 1 });
    expect(countPlaywright(null, false)).toEqual({ passed: 0, failed: 1 });
  });
});
