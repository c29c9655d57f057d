import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';

const SIZES = [16, 32, 48, 64, 128, 256, 512] as const;

/** Draws the page's own icon in every size that desktops ask for. */
export async function drawIcons(drawing: string, folder: string): Promise<void> {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const svg = readFileSync(drawing);
  for (const size of SIZES) await sharp(svg, { density: (72 * size) / 32 }).resize(size, size).png().toFile(path.join(folder, `${size}x${size}.png`));
}
