import type { Browser } from 'playwright-core';
import { chromiumHere, launchChromium } from '../../browser/launch-chromium.ts';

/** A Chromium for rehearsals: it opens no window by itself, so that the program's own answer to a page that asks for one decides, and has a camera to be refused. */
export function launchStage(): Promise<Browser> {
  return launchChromium(chromiumHere, ['--block-new-web-contents', '--use-fake-device-for-media-stream']);
}
