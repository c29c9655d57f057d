import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { KEYS, placesAt } from '../../../renderer/ui/keys/keys.ts';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
const HEARS = /onKeyDown=|onKeyUp=|onKeyPress=|addEventListener\('key(?:down|up|press)'|useHotkeys\(/;
/** Every file of the page that hears keys of its own. */
const hearing = readdirSync(join(ROOT, 'renderer'), { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.tsx?$/.test(name))
  .map((name) => join('renderer', name))
  .filter((name) => HEARS.test(readFileSync(join(ROOT, name), 'utf8')) && name !== 'renderer/app/use-arrival-place.ts');

describe('the list of keys', () => {
  test('names every file that hears keys, and none that hears none', () => {
    expect(hearing.length).toBeGreaterThan(10);
    expect([...new Set(KEYS.flatMap((one) => one.heardIn))].sort()).toEqual([...hearing].sort());
  });

  test('marks every printed character that works without the focus on what it is for', () => {
    const everywhere = KEYS.filter((one) => one.place === 'everywhere' || one.heardIn.some((file) => file.includes('use-yard-keys') || file.includes('use-work-keys')));
    for (const one of everywhere) expect(one.lone, one.does).toBe(one.keys.some((key) => key.length === 1 && !/[←→↑↓]/.test(key) || key === 'Space'));
  });

  test('says nothing twice, and knows the keys of each screen', () => {
    expect(new Set(KEYS.map((one) => one.does)).size).toBe(KEYS.length);
    expect([placesAt('/'), placesAt('/sessions/s1/work'), placesAt('/car/pip/intake'), placesAt('/ledger')]).toEqual([['yard', 'moving'], ['work'], ['intake'], []]);
  });
});
