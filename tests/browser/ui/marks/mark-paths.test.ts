import { describe, expect, test } from 'vitest';
import { bandPath, MARK_HEIGHT, wornPath, type Band } from '../../../../renderer/ui/marks/mark-paths.ts';

type Corner = { readonly x: number; readonly y: number };

/** The corners of a path made of M, L and V, as a pen goes. */
function corners(path: string): readonly Corner[] {
  const pen = { x: 0, y: 0 };
  return [...path.matchAll(/([MLV])([-\d.]+)(?: ([-\d.]+))?/g)].map(([, step, one, other]) => {
    if (step === 'V') pen.y = Number(one);
    else Object.assign(pen, { x: Number(one), y: Number(other) });
    return { ...pen };
  });
}

/** Grounds of notches: stretches of the lower edge, level, above the corners on both sides of them. */
function notches(path: string): readonly Corner[] {
  const all = corners(path);
  return all.filter((one, at) => {
    const [before, next, after] = [all[at - 1], all[at + 1], all[at + 2]];
    return before !== undefined && next !== undefined && after !== undefined && next.y === one.y && before.y > one.y && after.y > one.y;
  });
}

/** The rule of the house: worn-to-limit bars have a notched edge. */
describe('a bar of measured wear', () => {
  test.each<{ case: string; band: Band; least: number }>([
    { case: 'small, as in lists and the legend', band: { from: 1, likely: 12, to: 25 }, least: 2 },
    { case: 'as short as a mark may be', band: { from: 5, likely: 9, to: 15 }, least: 1 },
    { case: 'long', band: { from: 10, likely: 80, to: 200 }, least: 10 },
    { case: 'likely at once', band: { from: 30, likely: 30, to: 90 }, least: 3 },
    { case: 'ending blunt', band: { from: 10, likely: 150, to: 150 }, least: 8 },
    { case: 'running off the paper', band: { from: 10, likely: 300, to: 900 }, least: 60 },
  ])('$case: notched, and as thick and long as any other', ({ band, least }) => {
    const [plain, worn] = [corners(bandPath(band)), corners(wornPath(band))];
    expect(notches(bandPath(band))).toEqual([]);
    expect(notches(wornPath(band)).length).toBeGreaterThanOrEqual(least);
    for (const all of [plain, worn]) {
      expect([Math.min(...all.map((one) => one.x)), Math.max(...all.map((one) => one.x))]).toEqual([band.from, band.to]);
      expect([Math.min(...all.map((one) => one.y)), Math.max(...all.map((one) => one.y))]).toEqual([0, MARK_HEIGHT]);
    }
    // Never cut through: at each notch something is left above it, of the bar whose upper edge is that of the plain one.
    for (const notch of notches(wornPath(band))) {
      const part = notch.x <= band.likely ? (notch.x - band.from) / (band.likely - band.from) : (band.to - notch.x) / (band.to - band.likely);
      expect(notch.y).toBeGreaterThan(5.5 * (1 - part) + 1);
    }
  });
});
