import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { FIRST_DATE } from '../../../shared-core/calendar/local-date.ts';
import { startingSet, startingSetKeySchema, STARTING_SETS, suggestedSet, type StartingSetKey } from '../../../shared-core/care/starting-set.ts';
import { METRES_IN } from '../../../shared-core/units/distance.ts';
import { day } from '../calendar/day.ts';

const itemOf = (set: StartingSetKey, key: string) => startingSet(set).items.find((item) => item.key === key);

describe('the petrol set', () => {
  // Source: common practice, no source (reference tables R2 to R4 and R7 say the same).
  test.each([
    { key: 'engine-oil-and-filter', first: { months: 12, distance: 10_000 }, repeat: { months: 12, distance: 10_000 } },
    { key: 'cabin-filter', first: { months: 24, distance: null }, repeat: { months: 24, distance: null } },
    { key: 'engine-air-filter', first: { months: 48, distance: null }, repeat: { months: 48, distance: null } },
    { key: 'spark-plugs', first: { months: 48, distance: null }, repeat: { months: 48, distance: null } },
    { key: 'brake-fluid', first: { months: 36, distance: null }, repeat: { months: 24, distance: null } },
    { key: 'tyre-sealant', first: { months: 48, distance: null }, repeat: { months: 48, distance: null } },
  ])('$key: first $first.months months, then $repeat.months', ({ key, first, repeat }) => {
    const item = itemOf('petrol', key);
    const inMiles = (limit: NonNullable<typeof item>['first'] | undefined) => ({ months: limit?.months, distance: limit?.distance?.mi ?? null });
    expect([inMiles(item?.first), inMiles(item?.repeat), item?.work]).toEqual([first, repeat, 'replace']);
  });

  test('only the sealant has its date printed on it', () => {
    expect(startingSet('petrol').items.filter((item) => item.printedDate).map((item) => item.key)).toEqual(['tyre-sealant']);
  });
});

describe('every set', () => {
  test('is there, one for each kind of car', () => {
    expect(STARTING_SETS.map((set) => set.key)).toEqual([...startingSetKeySchema.options]);
    const files = readdirSync(new URL('../../../shared-core/care/starting-sets', import.meta.url)).filter((name) => name !== 'items-of-several-sets.json');
    expect(files.sort()).toEqual(startingSetKeySchema.options.map((key) => `${key}.json`).sort());
  });

  test.each(STARTING_SETS)('$key: at least 12 items, none twice, each marked', ({ items, source }) => {
    expect(items.length).toBeGreaterThanOrEqual(12);
    expect(new Set(items.map((item) => item.key)).size).toBe(items.length);
    expect(new Set(items.map((item) => item.name.toLowerCase())).size).toBe(items.length);
    expect(source).toBe('common practice: check your handbook');
  });

  test.each(STARTING_SETS)('$key: round distances, the one in km no longer and at most a fifth shorter', ({ items }) => {
    for (const limit of items.flatMap((item) => [item.first, item.repeat])) {
      if (limit.distance === null) continue;
      const share = (limit.distance.km * METRES_IN.km) / (limit.distance.mi * METRES_IN.mi);
      expect(share).toBeLessThanOrEqual(1.04);
      expect(share).toBeGreaterThanOrEqual(0.8);
    }
  });

  test.each(STARTING_SETS)('$key: what is counted from a day of the year has no distance; brakes and tyres are a matter of safety', ({ items }) => {
    for (const item of items) {
      if (item.anchor !== 'completion') expect([item.first.distance, item.repeat.distance]).toEqual([null, null]);
      if (/brake|tyre/i.test(item.name)) expect(item.harm, item.name).toBe('safety');
    }
  });
});

test('an electric car has nothing of an engine, and its high voltage is a garage\'s', () => {
  const { items } = startingSet('electric');
  expect(items.filter((item) => /engine|plug|exhaust|fuel|belt/i.test(item.name))).toEqual([]);
  for (const set of [startingSet('electric'), startingSet('hybrid')]) expect(set.items.filter((item) => /high-voltage|health report/i.test(item.name)).map((item) => item.place)).toEqual(['garage', 'garage']);
});

test('an item of several sets is the same in all of them, but in the set of cars from before 1980', () => {
  const byKey = new Map<string, string>();
  for (const { key: set, items } of STARTING_SETS) {
    for (const item of set === 'before-1980' ? [] : items) {
      const text = JSON.stringify(item);
      expect(byKey.get(item.key) ?? text, `${set}: ${item.key}`).toBe(text);
      byKey.set(item.key, text);
    }
  }
});

describe('the set that fits', () => {
  const car = { power: 'petrol', year: null, firstRegistered: null } as const;
  test.each([
    { case: 'petrol', car, set: 'petrol' },
    { case: 'electric', car: { ...car, power: 'electric' }, set: 'electric' },
    { case: 'of 1979', car: { ...car, year: 1979 }, set: 'before-1980' },
    { case: 'of 1980', car: { ...car, year: 1980 }, set: 'petrol' },
    { case: 'registered in 1972', car: { ...car, firstRegistered: day('1972-05-01') }, set: 'before-1980' },
    { case: 'built in 1981, registered never', car: { ...car, power: 'diesel', year: 1981 }, set: 'diesel' },
    { case: 'driven otherwise', car: { ...car, power: 'other' }, set: null },
    { case: 'driven by steam in 1900', car: { ...car, power: 'other', firstRegistered: FIRST_DATE }, set: 'before-1980' },
  ] as const)('$case: $set', (row) => {
    expect(suggestedSet(row.car)).toBe(row.set);
  });
});
