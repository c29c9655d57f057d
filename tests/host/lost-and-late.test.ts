import { rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { composeHost } from '../../electron/host/compose-host.ts';
import { databaseFile } from '../../electron/host/household-folder.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { day, openHouseholdWithPip } from './open-test-host.ts';

describe('what is lost or altered from outside', () => {
  test('a household with entries and without its key is refused, and no key is made', async () => {
    const host = await openHouseholdWithPip();
    await host.composed.close();
    rmSync(join(host.folder, 'key'));
    for (let again = 0; again < 2; again += 1) {
      expect(composeHost(host.folder, realWorld(day('2026-11-25')))).toMatchObject({ ok: false, refusal: { code: 'key-missing' } });
    }
  });

  test('a stored value that cannot be read is said to be damage, not a mistake of the program', async () => {
    const host = await openHouseholdWithPip();
    const other = new Database(databaseFile(host.folder));
    other.prepare("UPDATE fact SET value = '{' || value WHERE family = 'car'").run();
    other.close();
    expect(await host.call('due.show', {})).toMatchObject({ ok: false, refusal: { code: 'store-damaged' } });
  });
});

describe('a distance target that was passed long ago', () => {
  test('was due on the day it was passed, and distance governs', async () => {
    // By hand: done 2024-05-01 at 9000 + 9000 * 112/366 mi = 11 754; + 4000 = 15 754, between 2024-01-10 and 2025-01-10.
    const host = await openHouseholdWithPip();
    await host.must('item.add', { id: 'grease', car: 'pip', name: 'Grease', interval: { repeat: { months: 30, distance: { value: 4000, unit: 'mi' } } } });
    await host.must('record.add', { car: 'pip', date: day('2024-05-01'), lines: [{ item: 'grease' }] });
    const [window] = (await host.must('due.show', {})).cars[0]?.windows ?? [];
    // 6754 of the 9000 mi of that year: 274.7 of its 366 days after 2024-01-10.
    expect(window).toMatchObject({ state: 'late', limb: 'distance', earliest: '2024-10-11', likely: '2024-10-11', latest: '2024-10-11' });
  });
});

describe('needs of what is late', () => {
  test('are ordered from a supplier whose delivery is longer than the least notice', async () => {
    const host = await openHouseholdWithPip();
    await host.must('specification.set', { id: 'fluid', name: 'brake fluid', unit: 'litre' });
    await host.must('part.set', { id: 'can', name: 'a can', meets: ['fluid'] });
    await host.must('supplier.set', { id: 'far', name: 'Far Parts', leadDays: 21 });
    await host.must('offer.set', { id: 'o', supplier: 'far', part: 'can', quantity: 1, priceMinor: 900, seenOn: day('2026-11-01') });
    await host.must('item.add', { car: 'pip', name: 'Brake fluid', history: 'never-done', interval: { repeat: { months: 24, distance: null } }, needs: [{ specification: 'fluid', quantity: 1 }] });
    expect(await host.must('order.propose', {})).toMatchObject({ lines: [{ offer: 'o', packs: 1 }], unmet: [], needs: [{ neededBy: '2026-12-16' }] });
  });
});

describe('a table with marks in its numbers', () => {
  test.each([
    { case: 'a comma before three digits', cell: '"41,500"' },
    { case: 'a point before three digits', cell: '41.500' },
  ])('asks about $case and stores nothing', async ({ cell }) => {
    const host = await openHouseholdWithPip();
    const text = `date,miles\n2026-01-05,${cell}\n`;
    expect(await host.must('import.preview', { text, car: 'pip' })).toMatchObject({ ready: false, counts: { waiting: 1 }, questions: [{ answer: 'decimalMark' }] });
    expect(await host.call('import.keep', { text, car: 'pip' })).toMatchObject({ ok: false, refusal: { code: 'import-questions-open' } });
  });
});
