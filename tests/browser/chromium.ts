/** Where a Chromium usually is; the variable comes first. */
const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** The Chromium to test with, or null. @param exists whether a file is there */
export function findChromium(exists: (path: string) => boolean): string | null {
  const named = process.env.CHROMIUM_PATH;
  return [...(named ? [named] : []), ...USUAL_PLACES].find(exists) ?? null;
}
