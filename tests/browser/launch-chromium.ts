import { chromium, type Browser } from 'playwright-core';
import { findChromium, type FoundChromium } from './find-chromium.ts';

const FLAGS = ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

/** The Chromium that the browser tests use here; null where none can be had, and then they are skipped with a message. */
export const chromiumHere: FoundChromium | null = await findChromium();
if (chromiumHere === null) console.warn('No Chromium for this kind of machine: the browser tests are left out.');

/**
 * A real Chromium without a window. Web security stays on, as the tests look at it.
 *
 * @example const browser = await launchChromium();
 */
export async function launchChromium(found: FoundChromium | null = chromiumHere, flags: readonly string[] = []): Promise<Browser> {
  if (found === null) throw new Error('no Chromium here: guard the test with describe.skipIf(chromiumHere === null)');
  return chromium.launch({ executablePath: found.program, args: [...FLAGS, ...flags], env: { ...definedEnv(), LANGUAGE: 'en_US', ...found.env } });
}

function definedEnv(): Record<string, string> {
  return Object.fromEntries(Object.entries(process.env).filter((entry): entry is [string, string] => entry[1] !== undefined));
}
