import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { temporaryFolder } from '../host/open-test-host.ts';
import { jsonOf, runCommand } from './run-command.ts';

test('budget says the band, each month with its lines, and what is not in it; json says the same', async () => {
  const folder = temporaryFolder();
  const file = join(folder, 'start.json');
  writeFileSync(file, JSON.stringify([
    { operation: 'household.start', request: { name: 'Ours', unit: 'km' } },
    { operation: 'car.add', request: { id: 'pip', name: 'Pip', firstRegistered: '2022-11-25' } },
    { operation: 'car.add', request: { id: 'wren', name: 'Wren', firstRegistered: '1971-05-01', keptSince: '2020-01-01' } },
    { operation: 'obligation.add', request: { id: 'tax', car: 'pip', kind: 'road-tax', lastValidDay: '2027-02-01', months: 12, price: 19_000 } },
    { operation: 'obligation.add', request: { id: 'cover', car: 'wren', kind: 'insurance', lastValidDay: '2027-03-01', months: 12 } },
  ]));
  const on = (...words: readonly string[]) => runCommand(...words, '--household', join(folder, 'household'), '--on', '2026-11-25');
  expect((await on('enter', file)).status).toBe(0);

  const text = await on('budget');
  expect([text.status, text.said]).toEqual([0, '']);
  expect(text.out).toContain('Budget of all cars from 25 Nov 2026 to 24 Nov 2028, in GBP');
  // The line stands beneath its own month.
  expect(text.out).toMatch(/  from 25 Jan 2027: .*, of it listed 190\.00\n    1 Feb 2027 Pip: road tax, 190\.00\. Due about 1 Feb 2027\. As entered\.\n  from 25 Feb 2027: /);
  expect(text.out).toContain('Not in it\n  Wren: insurance. Nobody knows what it costs.');
  expect(text.out).toContain('! Fuel, one\'s own time, tools, and the trouble of bringing a car somewhere are not in it.');

  const one = await on('budget', '--months', '12', '--car', 'pip', '--json');
  expect(jsonOf(one)).toMatchObject({ today: '2026-11-25', to: '2027-11-24', currency: 'GBP', car: { id: 'pip', name: 'Pip' }, total: { plannedMinor: 19_000 }, missing: [], lines: [{ key: 'obligation/tax', on: '2027-02-01', amountMinor: 19_000, month: 2 }] });
  expect((jsonOf(one) as { months: unknown[] }).months).toHaveLength(12);

  expect([(await on('budget', 'pip')).status, (await on('budget', '--months', 'two')).status]).toEqual([2, 2]);
  const refused = await on('budget', '--months', '61');
  expect([refused.status, refused.said]).toEqual([1, expect.stringContaining('Months ahead must be a whole number from 1 to 60.')]);
  expect((await on('budget', '--car', 'nobody')).status).toBe(1);
});
