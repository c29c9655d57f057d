import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addMonths } from '../../shared-core/calendar/add-months.ts';
import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import { startingSet, type SetItem } from '../../shared-core/care/starting-set.ts';
import { day } from '../shared-core/calendar/day.ts';
import { axeFaults } from './axe-faults.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openServedPage, startHousehold, type ServedPage } from './served-page.ts';

const MOST_KEYS = 25;
const THIN = '\u202f';
const BOUGHT = day('2026-11-01');
const REGISTERED = day('2026-03-02');

/** The keys that were pressed, apart from the car's own names and numbers. */
class CountedKeys {
  readonly pressed: string[] = [];
  private readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async press(...keys: readonly string[]): Promise<void> {
    for (const key of keys) {
      this.pressed.push(key);
      await this.page.keyboard.press(key);
    }
  }

  /** Types a name or a number of the car into the field that has the focus, which must be the one meant. */
  async own(field: string, text: string): Promise<void> {
    await expect.poll(() => this.page.evaluate(() => (document.activeElement as HTMLInputElement).labels?.[0]?.textContent)).toBe(field);
    await this.page.keyboard.type(text);
  }
}

describe.skipIf(chromiumHere === null)('a car with a believable schedule, from an empty form', () => {
  let served: ServedPage;
  let page: Page;

  beforeAll(async () => {
    served = await openServedPage();
    page = served.page;
    await startHousehold(page);
  });
  afterAll(() => served.close());

  /** Every item of a set stands in the car's table with the dates that follow from the set, counted from a day. */
  async function windowsFollow(items: readonly SetItem[], which: 'first' | 'repeat', from: LocalDate): Promise<void> {
    await expect.poll(() => page.getByRole('row').count()).toBeGreaterThan(items.length);
    const rows = await page.getByRole('row').allInnerTexts();
    for (const item of items) {
      const row = rows.find((text) => text.trim().startsWith(`${item.name}\n`)) ?? `no row of ${item.name}`;
      expect(row).toContain('not confirmed · common practice: check your handbook');
      const { months, distance } = item[which];
      if (item.anchor === 'completion' && months !== null) expect(row, item.name).toContain(`by ${written(addMonths(from, months))}`);
      if (distance !== null) expect(row, item.name).toContain(`${String(distance.mi).length > 4 ? distance.mi.toLocaleString('en').replace(',', THIN) : distance.mi} mi`);
    }
  }

  /** The items of a car that have a due window in the yard, by its table. */
  async function inTheYard(car: string): Promise<number> {
    await page.getByRole('link', { name: 'Yard', exact: true }).click();
    await page.getByRole('heading', { name: 'The yard' }).waitFor();
    await page.getByText('Table', { exact: true }).click();
    const rows = page.getByRole('row').filter({ hasText: car });
    await rows.first().waitFor();
    const texts = await rows.allInnerTexts();
    expect(texts.filter((text) => text.includes('not known') || /\blate\b/.test(text))).toEqual([]);
    return texts.length;
  }

  test('a diesel car just bought: at most 25 keys beyond its names and numbers', async () => {
    await page.getByRole('link', { name: 'Car', exact: true }).click();
    await page.getByRole('heading', { name: 'No car yet' }).waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('No car yet');
    const keys = new CountedKeys(page);
    await keys.press('Tab');
    await keys.own('Name', 'Pip');
    await keys.press('Tab');
    await keys.own('What it is', 'small hatch');
    await keys.press('Tab');
    await keys.own('Year', '2022');
    await keys.press('Tab', 'd', 'Tab', 'Tab');
    await keys.own('First registered', '1/3/2022');
    await keys.press('Tab', 'Tab');
    await keys.own('Kept since', '1/11/2026');
    await keys.press('Tab', 'Tab');
    await keys.own('The odometer shows now', '38250');
    await expect.poll(() => page.getByLabel('Starting set').inputValue()).toBe('diesel');
    expect(await axeFaults(page)).toEqual([]);
    await keys.press('Tab', 'Tab', 'Tab', 'c', 'Tab', 'Tab', 'Tab', 'Enter');
    await page.getByRole('heading', { name: 'Pip', level: 1 }).waitFor();
    expect(keys.pressed.length, keys.pressed.join(' ')).toBeLessThanOrEqual(MOST_KEYS);
    expect(keys.pressed).toHaveLength(19);
  });

  test('its windows follow from the set, counted from the day it was bought', async () => {
    const { items } = startingSet('diesel');
    await windowsFollow(items, 'repeat', BOUGHT);
    expect(await axeFaults(page)).toEqual([]);
    const inYard = await inTheYard('Pip');
    expect(inYard).toBe(items.length);
    expect(inYard).toBeGreaterThanOrEqual(12);
    expect(await axeFaults(page)).toEqual([]);
  });

  test('a petrol car from new takes what stands there already', async () => {
    await page.getByRole('link', { name: 'Car', exact: true }).click();
    await page.getByRole('button', { name: 'Add a car' }).click();
    const keys = new CountedKeys(page);
    await keys.own('Name', 'Wren');
    await keys.press('Tab', 'Tab', 'Tab', 'Tab', 'Tab');
    await keys.own('First registered', '2/3/2026');
    await keys.press('Tab', 'Tab', 'Tab', 'Tab');
    await keys.own('The odometer shows now', '5100');
    await expect.poll(() => page.getByLabel('Before these records').inputValue()).toBe('never-done');
    await keys.press('Enter');
    await page.getByRole('heading', { name: 'Wren', level: 1 }).waitFor();
    expect(keys.pressed).toHaveLength(10);
    // What is looked at each month or quarter has passed since March, and says so; the rest lies ahead.
    await windowsFollow(startingSet('petrol').items.filter((item) => (item.first.months ?? 0) > 8), 'first', REGISTERED);
  });

  test('the car, its reading and its items are undone in one press', async () => {
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('status').filter({ hasText: 'Undone.' }).waitFor();
    await page.getByRole('link', { name: 'Yard', exact: true }).click();
    await page.getByRole('heading', { name: 'The yard' }).waitFor();
    await expect.poll(() => page.getByText('Wren').count()).toBe(0);
    await page.getByText('Pip').first().waitFor();
  });

  test('nothing complained', () => expect(served.complaints).toEqual([]));
});

/** '1 Nov 2028' for 2028-11-01: the household writes as Britain does. */
function written(date: LocalDate): string {
  const [year, month, dayOfMonth] = date.split('-').map(Number);
  return `${dayOfMonth} ${['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'][(month ?? 0) - 1]} ${year}`;
}
