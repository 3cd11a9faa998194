/** Finds the Chromium that the browser tests drive. Plain JavaScript: `npm test` asks before it has built anything. */
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** The first one that is there; one without windows takes half the time. */
const NAMES = ['chromium-headless-shell', 'chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

const FOLDERS = ['/usr/bin', '/usr/local/bin', '/snap/bin'];

const APPLICATIONS = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files\\Chromium\\Application\\chrome.exe',
];

/**
 * The executable at CHROMIUM_PATH when that is set, or else the first one at the usual places.
 * @returns {string | undefined} undefined when there is none
 */
export function findChromium() {
  const asked = process.env['CHROMIUM_PATH'];
  if (asked) return existsSync(asked) ? asked : undefined;
  const onPath = (process.env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  const candidates = [...onPath, ...FOLDERS].flatMap((folder) => NAMES.map((name) => join(folder, name)));
  return [...candidates, ...APPLICATIONS].find((path) => existsSync(path));
}
