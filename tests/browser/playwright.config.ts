import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from '@playwright/test';
import { findChromium } from './chromium';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** The built page is served here; another port where this one is taken. */
const port = Number(process.env.EARPATH_PORT ?? 4173);
const address = `http://localhost:${port}/`;

const executablePath = findChromium(existsSync);

export default defineConfig({
  testDir: '.',
  testMatch: '**/*.spec.ts',
  outputDir: '../../test-results',
  // Software drawing fills a core; a second worker only makes both slow.
  workers: 1,
  fullyParallel: false,
  forbidOnly: !!process.env.CI,
  retries: 0,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: process.env.EARPATH_JSON_REPORT
    ? [['line'], ['json', { outputFile: process.env.EARPATH_JSON_REPORT }]]
    : 'line',
  use: {
    baseURL: address,
    // Each test is a first visit; the files kept on the machine have tests of their own.
    serviceWorkers: 'block',
    viewport: { width: 1280, height: 800 },
    deviceScaleFactor: 1,
    trace: 'retain-on-failure',
    launchOptions: {
      ...(executablePath && { executablePath }),
      // WebGL by software, and no word to anyone outside.
      args: [
        '--no-sandbox',
        '--use-angle=swiftshader',
        '--enable-unsafe-swiftshader',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
  webServer: {
    command: `npx vite preview --port ${port} --strictPort`,
    cwd: ROOT,
    url: address,
    reuseExistingServer: false,
    timeout: 30_000,
  },
});
