import type { Colour, Scene } from './sample-scenes.ts';

const SKY: Colour = [186, 204, 214];
const ROAD: Colour = [120, 118, 112];
const BODY: Colour = [52, 112, 120];
const GLASS: Colour = [206, 220, 224];
const TYRE: Colour = [40, 40, 44];
const HUB: Colour = [170, 172, 174];
const WHEELS = [0.29, 0.71];

/** A small hatch from the side on a road, of no make. */
export const wholeCar: Scene = ({ x, y }) => {
  const fromWheel = Math.min(...WHEELS.map((middle) => Math.hypot((x - middle) * 1.333, y - 0.7)));
  if (fromWheel < 0.04) return HUB;
  if (fromWheel < 0.09) return TYRE;
  const roof = 0.34 + 0.9 * Math.max(0, Math.abs(x - 0.5) - 0.14);
  if (y > roof + 0.03 && y < 0.5 && Math.abs(x - 0.5) > 0.012 && x > 0.3 && x < 0.7) return GLASS;
  const bonnet = x < 0.3 || x > 0.74 ? 0.5 + 0.25 * Math.abs(x - 0.5) - 0.05 : roof;
  if (x > 0.13 && x < 0.86 && y > Math.min(bonnet, 0.52) && y < 0.7) return BODY;
  return y < 0.74 ? SKY : ROAD;
};
