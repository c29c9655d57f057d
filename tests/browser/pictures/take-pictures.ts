import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { PROJECT } from '../../../electron/start/bundle.ts';
import { setup } from '../../build-page.ts';
import { chromiumHere } from '../launch-chromium.ts';
import { HOUSEHOLDS } from '../places/households.ts';
import { visit, type Place } from '../places/place.ts';
import { putInto, THEMES, type ThemeName } from '../places/themes.ts';

/** In CSS pixels: a small screen, a large one, and the small one at 200 %. */
const SIZES = [[1280, 800], [1920, 1080], [640, 400]] as const;
const FOLDER = path.join(PROJECT, 'dist', 'pictures');
/** Only the places whose names hold one of these; all where none is given. */
const WANTED = process.argv.slice(2);

/** Takes a picture of every place at every size in every theme into dist/pictures: `npm run pictures`, or `npm run pictures -- yard parts`. */
async function takePictures(): Promise<void> {
  await setup();
  mkdirSync(FOLDER, { recursive: true });
  for (const open of Object.values(HOUSEHOLDS)) {
    const { page, places, complaints, close } = await open();
    for (const place of places.filter(({ name }) => WANTED.length === 0 || WANTED.some((wanted) => name.includes(wanted)))) await pictureOf(page, place);
    await close();
    for (const one of complaints) console.error(`The page complained: ${one}`);
  }
  console.error(`The pictures are in ${FOLDER}.`);
}

async function pictureOf(page: Page, place: Place): Promise<void> {
  await page.setViewportSize({ width: SIZES[0][0], height: SIZES[0][1] });
  await visit(page, place);
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height });
    for (const theme of Object.keys(THEMES) as ThemeName[]) {
      await putInto(page, theme);
      await page.screenshot({ path: path.join(FOLDER, `${place.name}-${width}-${theme}.png`), fullPage: true, caret: 'initial' });
    }
  }
}

if (chromiumHere === null) process.exitCode = 1;
else await takePictures();
