/** Sums of what the two test runners report. A run that failed never counts as all passed. */

export interface Count {
  passed: number;
  failed: number;
}

interface VitestReport {
  numPassedTests: number;
  numFailedTests: number;
  testResults: { status: string; assertionResults: unknown[] }[];
}

interface PlaywrightReport {
  stats: { expected: number; unexpected: number; flaky: number };
  errors: unknown[];
}

/** @param report vitest's JSON, or null  @param ok whether it ended well */
export function countVitest(report: unknown, ok: boolean): Count {
  if (!report) return { passed: 0, failed: 1 };
  const { numPassedTests, numFailedTests, testResults } = report as VitestReport;
  // A file that cannot even be loaded has no tests in it to fail.
  const unloadable = testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  ).length;
  return settle(numPassedTests, numFailedTests + unloadable, ok);
}

/** @param report Playwright's JSON, or null  @param ok whether it ended well */
export function countPlaywright(report: unknown, ok: boolean): Count {
  if (!report) return { passed: 0, failed: 1 };
  const { stats, errors } = report as PlaywrightReport;
  return settle(stats.expected, stats.unexpected + stats.flaky + errors.length, ok);
}

/** No test at all, or a bad ending without a failed test, is a failure of its own. */
function settle(passed: number, failed: number, ok: boolean): Count {
  const wrong = failed === 0 && (!ok || passed === 0);
  return { passed, failed: wrong ? 1 : failed };
}
