/**
 * Runs every test: those in Node, then the built page in a real browser. The last line says
 * `N passed, N failed` over both; the exit status is 0 only when nothing failed.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findChromium } from './browser/chromium';
import { type Count, countPlaywright, countVitest } from './count-results';

const reports = mkdtempSync(join(tmpdir(), 'earpath-tests-'));

function run(command: string, args: string[], env: NodeJS.ProcessEnv = {}): boolean {
  const { status } = spawnSync(command, args, {
    stdio: 'inherit',
    env: { ...process.env, ...env },
  });
  return status === 0;
}

const tool = (name: string) => join('node_modules', '.bin', name);

/** A report as JSON, or null when the run died before writing it. */
function readReport(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return null;
  }
}

function haveChromium(): boolean {
  if (findChromium(existsSync)) return true;
  const mayInstall = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (mayInstall) {
    run('apt-get', ['update']);
    run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], {
      DEBIAN_FRONTEND: 'noninteractive',
    });
  }
  return findChromium(existsSync) !== null;
}

async function freePort(first: number): Promise<number> {
  for (let port = first; port < first + 50; port++) {
    const free = await new Promise<boolean>((answer) => {
      const server = createServer();
      server.once('error', () => answer(false));
      server.listen(port, 'localhost', () => server.close(() => answer(true)));
    });
    if (free) return port;
  }
  return first;
}

function unitTests(): Count {
  const report = join(reports, 'vitest.json');
  const ok = run(tool('vitest'), [
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ]);
  return countVitest(readReport(report), ok);
}

async function browserTests(): Promise<Count> {
  if (!haveChromium()) {
    console.error('No browser to test with: install Chromium, or name one in CHROMIUM_PATH.');
    return { passed: 0, failed: 1 };
  }
  if (!process.argv.includes('--built') && !run(tool('vite'), ['build', '--logLevel', 'warn'])) {
    console.error('The page does not build, so it was not tested in a browser.');
    return { passed: 0, failed: 1 };
  }
  const report = join(reports, 'playwright.json');
  const ok = run(tool('playwright'), ['test', '-c', 'tests/browser/playwright.config.ts'], {
    EARPATH_JSON_REPORT: report,
    EARPATH_PORT: String(await freePort(4173)),
  });
  return countPlaywright(readReport(report), ok);
}

const unit = unitTests();
const browser = await browserTests();
rmSync(reports, { recursive: true, force: true });
const passed = unit.passed + browser.passed;
const failed = unit.failed + browser.failed;
console.log(
  `\nIn Node: ${unit.passed} passed, ${unit.failed} failed. ` +
    `In the browser: ${browser.passed} passed, ${browser.failed} failed.\n`,
);
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
