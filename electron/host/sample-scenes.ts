/** Red, green and blue, 0 to 255. */
export type Colour = readonly [number, number, number];

/** A place in a scene, 0 to 1 from the left and from the top, and how worn what is shown is. */
export interface ScenePoint {
  readonly x: number;
  readonly y: number;
  readonly wear: number;
  readonly seed: number;
}

/** What a scene shows at a place. */
export type Scene = (point: ScenePoint) => Colour;

/** A pad from above: the disc to the left, what is left of the lining, its backing plate; wear leaves less lining. */
export const brakePad: Scene = ({ x, y, wear, seed }) => {
  const lining = 0.3 + 0.02 + 0.3 * (1 - wear);
  if (x < 0.3) return lit([168, 174, 178], 0.5 + 0.5 * grain(seed, Math.floor(x * 160), 0), grain(seed, x * 300, y * 20));
  if (x < lining) return lit([112, 92, 76], 0.55 + 0.6 * grain(seed, x * 220, y * 220), grain(seed + 1, x * 90, y * 90));
  if (x < lining + 0.1) return lit([62, 64, 70], 1, grain(seed, x * 120, y * 120));
  return lit([96, 84, 74], 0.35 + 0.4 * (1 - y), grain(seed, x * 60, y * 60));
};

/** A tyre cut across: four grooves between five ribs, shallower with wear, road dust below them. */
export const tyreTread: Scene = ({ x, y, wear, seed }) => {
  const shoulder = 0.3 + 0.35 * Math.abs(x - 0.5) ** 2;
  const depth = 0.06 + 0.26 * (1 - wear);
  const inGroove = GROOVES.some((middle) => Math.abs(x - middle) < 0.032);
  if (y < shoulder + (inGroove ? depth : 0)) return lit([176, 188, 196], 0.75 + 0.25 * (1 - y), 0.5);
  const dust = inGroove && y < shoulder + depth + 0.03 ? 1.7 : 1;
  return lit([56, 56, 58], dust * (0.8 + 0.4 * (1 - y)), grain(seed, x * 200, y * 200));
};
const GROOVES: readonly number[] = [0.18, 0.39, 0.61, 0.82];

/** A painted panel behind a step, with rust that spreads from its edge; more of it with wear. */
export const underside: Scene = ({ x, y, wear, seed }) => {
  if (y > 0.78) return lit([70, 72, 74], 0.9, grain(seed, x * 100, y * 100));
  const rough = cloud(seed, x * 7, y * 7) + 0.5 * cloud(seed + 3, x * 19, y * 19);
  const spread = rough - 1.6 * Math.hypot(x - 0.62, 0.8 * (y - 0.6)) + 0.55 * wear;
  if (spread > 0.55) return lit([142, 78, 40], 0.6 + 0.7 * cloud(seed + 7, x * 30, y * 30), grain(seed, x * 200, y * 200));
  return lit([168, 176, 170], spread > 0.48 ? 0.8 : 1, grain(seed, x * 80, y * 80));
};

/** A colour under so much light, with a little grain (0 to 1). */
function lit([red, green, blue]: Colour, light: number, speck: number): Colour {
  const factor = light * (0.92 + 0.16 * speck);
  return [red * factor, green * factor, blue * factor];
}

/** Chance that is always the same for a seed and a whole place: 0 to 1. */
function grain(seed: number, x: number, y: number): number {
  let mixed = Math.imul(seed + 374_761_393, 668_265_263) ^ Math.imul(Math.floor(x) + 1_274_126_177, 2_246_822_519) ^ Math.imul(Math.floor(y) + 97, 3_266_489_917);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 2_654_435_761);
  return ((mixed ^ (mixed >>> 13)) >>> 0) / 2 ** 32;
}

/** The same, drawn smoothly between whole places. */
function cloud(seed: number, x: number, y: number): number {
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const [across, down] = [smooth(x - left), smooth(y - top)];
  const between = (row: number) => grain(seed, left, row) * (1 - across) + grain(seed, left + 1, row) * across;
  return between(top) * (1 - down) + between(top + 1) * down;
}

function smooth(t: number): number {
  return t * t * (3 - 2 * t);
}
