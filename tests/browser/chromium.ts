import { type Browser, chromium } from 'playwright-core';
import { findChromium } from './find-chromium.mjs';

const ARGS = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Starts the Chromium of this machine without a window. Chromium refuses its sandbox to root. */
export function launchChromium(): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error('no Chromium found; install it or set CHROMIUM_PATH');
  const isRoot = process.getuid?.() === 0;
  return chromium.launch({ executablePath, args: isRoot ? [...ARGS, '--no-sandbox'] : ARGS });
}
