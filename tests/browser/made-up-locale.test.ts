import { afterAll, beforeAll, expect, test } from 'vitest';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { composeHost } from '../../electron/host/compose-host.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { readEntries } from '../../electron/store/journal-table.ts';
import { laySample } from '../sample-build.ts';
import { leftOutside, ownTexts, type LeftOutside } from './made-up/left-outside.ts';
import { notePresses, pressAgain } from './made-up/press-again.ts';
import { cutOff, textsOnPage } from './made-up/texts-on-page.ts';
import type { Place } from './places/place.ts';
import { samplePlaces } from './places/sample-places.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

/** Under a locale made up from the keys alone, all that is left in plain letters is somebody's own or was told past the words. */
let sample: SamplePage;
let left: LeftOutside;
const noted: { readonly place: Place; readonly presses: readonly number[] }[] = [];
const [outside, cut]: [string[], string[]] = [[], []];

beforeAll(async () => {
  left = leftOutside(await textsOfSample());
  sample = await openSamplePage();
  for (const place of await samplePlaces(sample)) noted.push({ place, presses: await notePresses(sample.page, place) });
  await sample.must('household.change', { locale: 'en-XA' });
  for (const { place, presses } of noted) {
    await pressAgain(sample.page, place, presses);
    const found = (await textsOnPage(sample.page)).map(({ text, at }) => ({ text: left(text), at })).filter((one) => one.text !== '');
    outside.push(...new Set(found.map(({ text, at }) => `${place.name}: ${at}: ${text}`)));
    cut.push(...(await cutOff(sample.page)).map((one) => `${place.name}: ${one}`));
  }
}, 600_000);
afterAll(() => sample.close());

test('every screen, leaf and form of the sample is walked, in the made-up locale', async () => {
  expect(noted.length).toBeGreaterThan(70);
  expect(await sample.page.locator('html').getAttribute('lang')).toBe('en-XA');
});

test('nothing is told past the words', () => {
  expect(outside).toEqual([]);
});

test('nothing is cut off or sideways with words 40 % longer', () => {
  expect(cut).toEqual([]);
});

/** All that the sample's journal holds in words, and the place where it lies. */
async function textsOfSample(): Promise<string[]> {
  const folder = mkdtempSync(join(tmpdir(), 'made-up-'));
  await laySample(join(folder, 'household'));
  const host = composeHost(join(folder, 'household'), realWorld(null));
  if (!host.ok) throw new Error(host.refusal.code);
  const texts = [...readEntries(host.value.context.household().store)].flatMap((entry) => ownTexts(entry.values));
  await host.value.close();
  rmSync(folder, { recursive: true, force: true });
  return texts;
}
