import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../host/open-test-host.ts';
import { jsonOf, runCommand, type Ran } from './run-command.ts';

let folder = '';
const on = (...words: readonly string[]): Promise<Ran> => runCommand(...words, '--household', join(folder, 'household'), '--on', '2026-11-25');

beforeEach(async () => {
  folder = temporaryFolder();
  const file = join(folder, 'start.json');
  writeFileSync(file, JSON.stringify([
    { operation: 'household.start', request: { name: 'Ours', currency: 'KWD' } },
    { operation: 'car.add', request: { id: 'pip', name: 'Pip', firstRegistered: '2022-11-25' } },
    { operation: 'record.add', request: { id: 'r1', car: 'pip', date: '2025-05-01', place: 'garage', lines: [{ name: '=oil' }], costs: [{ kind: 'labour', text: 'labour', amountMinor: 12_345 }, { kind: 'discount', text: 'as agreed', amountMinor: -345 }] } },
    { operation: 'fuel.set', request: { car: 'pip', year: 2025, paidMinor: 500_000 } },
    { operation: 'quote.set', request: { car: 'pip', by: 'the garage', on: '2025-04-01', things: [{ id: 't', item: null, text: 'oil' }], totalMinor: 20_000 } },
  ]));
  const ran = await on('enter', file, '--json');
  if (ran.status !== 0) throw new Error(ran.said);
});

describe('the ledger in the terminal', () => {
  test('sums by car and year, in the minor units of the currency (three digits: ISO 4217)', async () => {
    const ran = await on('ledger');
    expect([ran.status, ran.said]).toEqual([0, '']);
    expect(ran.out).toContain('Paid in all: 512.000 KWD. For cars 512.000 KWD, on the shelf and not used by a car 0.000 KWD, for wishes 0.000 KWD.');
    expect(ran.out).toContain('Pip: 12.000 KWD, and 500.000 KWD for fuel or charging; a whole year costs about 12.000 KWD (middle of 1)');
    expect(jsonOf(await on('ledger', '--json'))).toMatchObject({ currency: 'KWD', paid: { paidMinor: 512_000 } });
  });

  test('the lines behind them, of one year, as text and as a table whose texts are harmless and whose amounts are numbers', async () => {
    const text = await on('ledger', '--lines', '--year', '2025', '--car', 'pip');
    expect(text.out).toContain('2025-05-01        12.345  labour                Pip: =oil');
    expect(text.out).toContain('in all           512.000 KWD');
    const csv = await on('ledger', '--lines', '--csv');
    expect(csv.out.split('\r\n').map((line) => line.trimEnd())).toEqual([
      '"date","kind","amount","currency","car","wish","what"',
      '"2025-12-31","fuel","500.000","KWD","Pip","","fuel or charging of 2025"',
      '"2025-05-01","discount","-0.345","KWD","Pip","","\'=oil"',
      '"2025-05-01","labour","12.345","KWD","Pip","","\'=oil"',
    ]);
    expect(jsonOf(await on('ledger', '--lines', '--year', '2024', '--json'))).toMatchObject({ lines: [], totalMinor: 0 });
  });

  test('a car is found by its name as well, and one that is not there is refused', async () => {
    expect(jsonOf(await on('ledger', '--lines', '--car', 'Pip', '--json'))).toMatchObject({ totalMinor: 512_000 });
    const none = await on('ledger', '--lines', '--car', 'nobody');
    expect([none.status, none.said]).toEqual([1, expect.stringContaining('There is no car nobody here.')]);
  });

  test.each([
    [['ledger', 'pip'], 2, 'ledger takes no further words.'],
    [['ledger', '--year', '2025'], 2, '--csv, --car and --year go with --lines.'],
    [['ledger', '--lines', '--year', 'last'], 2, '--year takes a year of four digits.'],
    [['quotes', 'pip'], 2, 'quotes takes no further words.'],
  ])('%j ends with %i', async (words, status, why) => {
    const ran = await on(...words);
    expect([ran.status, ran.said]).toEqual([status, expect.stringContaining(why)]);
  });

  test('quotes: a price for what would not be done at home gives no sum', async () => {
    const ran = await on('quotes');
    expect([ran.status, ran.out]).toEqual([0, expect.stringContaining('The price is for oil as well, which would not be done at home: no sum can be made of it.')]);
  });
});
