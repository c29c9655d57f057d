import { describe, expect, test } from 'vitest';
import { chromiumHere } from '../launch-chromium.ts';
import { SHELL } from '../shells/open-shell.ts';
import { HOUSEHOLDS } from './households.ts';
import { lookOver } from './look-over.ts';

/** All that the page can show, in every theme. */
describe.skipIf(chromiumHere === null || SHELL !== 'loopback')('every place', { timeout: 900_000 }, () => {
  test.each(Object.entries(HOUSEHOLDS))('of the household "%s" can be used by everybody', async (_name, open) => {
    const { page, places, complaints, close } = await open();
    await page.emulateMedia({ reducedMotion: 'reduce' });
    const faults: string[] = [];
    for (const place of places) faults.push(...(await lookOver(page, place)));
    await close();
    expect(faults).toEqual([]);
    expect(complaints).toEqual([]);
  });
});
