import type { PhotographDrawing, PhotographSubject } from '../../shared-core/sample/sample-drawing.ts';
import { pngBytes } from './png-bytes.ts';
import { exifBlock } from './exif-block.ts';
import { brakePad, tyreTread, underside, type Colour, type Scene } from './sample-scenes.ts';
import { wholeCar } from './sample-car-scene.ts';
import { inSampleMark } from './sample-mark.ts';

const WIDTH = 320;
const HEIGHT = 240;
/** Colours are rounded to this, which keeps the file small. */
const SHADE = 6;

const SCENES: Readonly<Record<PhotographSubject, Scene>> = { 'brake-pad': brakePad, 'tyre-tread': tyreTread, underside, car: wholeCar };

/** A photograph drawn by code, marked as a sample. */
export function drawPhotograph({ subject, wear, seed, taken }: PhotographDrawing): Uint8Array {
  const scene = SCENES[subject];
  const pixels = new Uint8Array(WIDTH * HEIGHT * 3);
  for (let y = 0; y < HEIGHT; y += 1) {
    for (let x = 0; x < WIDTH; x += 1) {
      pixels.set(marked(x, y, () => scene({ x: x / WIDTH, y: y / HEIGHT, wear, seed })).map(rounded), (y * WIDTH + x) * 3);
    }
  }
  return pngBytes({ width: WIDTH, height: HEIGHT, pixels }, taken === undefined ? null : exifBlock(taken.at, taken.offset));
}

/** The mark in the lower left corner, light on dark, over whatever is shown. */
function marked(x: number, y: number, behind: () => Colour): Colour {
  const mark = inSampleMark(x - 10, y - (HEIGHT - 32));
  if (mark === 'letter') return [240, 240, 232];
  return mark === 'ground' ? [24, 28, 30] : behind();
}

function rounded(channel: number): number {
  return Math.max(0, Math.min(255, Math.round(channel / SHADE) * SHADE));
}
