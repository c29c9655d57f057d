import { statSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { PROJECT } from '../../../electron/start/bundle.ts';
import { setup } from '../../build-page.ts';
import { HOUSEHOLDS } from '../places/households.ts';
import { visit } from '../places/place.ts';
import { putInto } from '../places/themes.ts';

/** The pictures that the README shows, by their places. */
const SHOWN: Readonly<Record<string, string>> = { yard: 'renderer/yard/yard.png', car: 'renderer/car/car.png', 'job-sheet': 'renderer/sessions/sheet/job-sheet.png' };
const VIEW = { width: 1280, height: 800 };

/** Takes the pictures of the README anew, of the sample in light: `npm run pictures:readme`. */
async function takeReadmePictures(): Promise<void> {
  await setup();
  const { page, places, close } = await HOUSEHOLDS.sample();
  await page.setViewportSize(VIEW);
  await putInto(page, 'light');
  for (const place of places) {
    const file = SHOWN[place.name];
    if (file === undefined) continue;
    await visit(page, place);
    // The ring round the heading is for the keyboard, and nobody is there.
    await page.evaluate(() => document.activeElement instanceof HTMLElement && document.activeElement.blur());
    const target = path.join(PROJECT, file);
    await sharp(await page.screenshot()).png({ palette: true, colours: 128, effort: 10 }).toFile(target);
    console.error(`${file}: ${Math.round(statSync(target).size / 1000)} kB`);
  }
  await close();
}

await takeReadmePictures();
