import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { runCommandLine } from '../../electron/cli/run-command-line.ts';
import { temporaryFolder } from '../host/open-test-host.ts';

/** Runs a command as a person would, and gives its JSON. */
async function run(...words: string[]): Promise<{ status: number; json: Record<string, never>; said: string }> {
  let out = '';
  let said = '';
  const status = await runCommandLine([...words, '--json'], { out: (text) => (out += text), say: (text) => (said += text) });
  return { status, json: JSON.parse(out) as Record<string, never>, said };
}

const ENTRIES = [
  { operation: 'household.start', request: { name: 'Ours', unit: 'mi' } },
  { operation: 'car.add', request: { id: 'pip', name: 'Pip', firstRegistered: '2022-11-25', keptSince: '2022-11-25' } },
  { operation: 'car.add', request: { id: 'alder', name: 'Alder', unit: 'km' } },
  { operation: 'specification.set', request: { id: 'oil', name: 'engine oil as the handbook asks', unit: 'litre' } },
  { operation: 'specification.set', request: { id: 'fluid', name: 'brake fluid as the handbook asks', unit: 'litre' } },
  { operation: 'part.set', request: { id: 'oil-5', name: 'oil, 5 litres', meets: ['oil'] } },
  { operation: 'part.set', request: { id: 'fluid-1', name: 'brake fluid', meets: ['fluid'] } },
  { operation: 'supplier.set', request: { id: 'north', name: 'North Parts', deliveryMinor: 495, freeFromMinor: 6000, leadDays: 3 } },
  { operation: 'offer.set', request: { id: 'o1', supplier: 'north', part: 'oil-5', quantity: 5, priceMinor: 3499, seenOn: '2026-11-01' } },
  { operation: 'offer.set', request: { id: 'o2', supplier: 'north', part: 'fluid-1', quantity: 1, priceMinor: 990, seenOn: '2026-11-01' } },
  { operation: 'item.add', request: { id: 'pip-fluid', car: 'pip', name: 'Brake fluid', harm: 'safety', history: 'never-done', interval: { first: { months: 36, distance: null }, repeat: { months: 24, distance: null } }, needs: [{ specification: 'fluid', quantity: 1 }] } },
  { operation: 'item.add', request: { id: 'alder-oil', car: 'alder', name: 'Oil', history: 'unknown', interval: { repeat: { months: 12, distance: { value: 15_000, unit: 'km' } } }, needs: [{ specification: 'oil', quantity: 4 }] } },
  { operation: 'obligation.add', request: { id: 'pip-test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: '2026-12-17', keepsDate: true, noticeDays: 21 } },
];

test('an empty household, filled by commands alone, goes through every stage to a checked pack', async () => {
  const folder = temporaryFolder();
  const household = ['--household', join(folder, 'household'), '--on', '2026-11-25'];
  const file = (name: string, content: unknown) => {
    writeFileSync(join(folder, name), typeof content === 'string' ? content : JSON.stringify(content));
    return join(folder, name);
  };

  expect(await run('due', ...household)).toMatchObject({ status: 1, json: { refused: { code: 'household-not-started' } } });
  expect((await run('enter', file('all.json', ENTRIES), ...household)).status).toBe(0);

  expect(await run('reading', 'Pip', '-5', ...household)).toMatchObject({ status: 1, json: { refused: { code: 'not-a-distance' } } });
  for (const [date, miles] of [['2024-02-01', 9000], ['2025-02-01', 18_100], ['2026-02-01', 27_000], ['2026-10-01', 33_000]] as const) {
    expect((await run('reading', 'Pip', String(miles), '--date', date, ...household)).json).toMatchObject({ state: 'accepted', repairs: [] });
  }
  expect((await run('reading', 'pip', '3310', '--date', '2026-11-20', ...household)).json).toMatchObject({ state: 'set-aside', code: 'decrease' });
  const csv = file('alder.csv', 'date,km\n2025-01-10,120000\n2025-07-10,131000\nnever,1\n2026-06-10,148000\n');
  expect((await run('import', csv, '--car', 'alder', ...household)).json).toMatchObject({ kind: 'readings', counts: { stored: 3, refused: 1 }, rows: [{ line: 4, code: 'import-not-a-date' }] });
  expect((await run('due', ...household)).json).toMatchObject({ cars: [{ id: 'pip' }, { id: 'alder', odometer: null }] });
  expect((await run('import', csv, '--car', 'alder', '--keep', ...household)).json).toMatchObject({ counts: { stored: 3 } });

  const due = await run('due', ...household);
  expect(due.json).toMatchObject({
    today: '2026-11-25',
    cars: [
      {
        id: 'pip', name: 'Pip', odometer: { unit: 'mi' }, doubtful: [{ value: 3310, code: 'decrease' }],
        windows: [{ item: 'pip-fluid', state: 'late', limb: 'time', lateBy: { days: 365, months: 12, distance: null } }],
        obligations: [{ kind: 'roadworthiness-test', on: '2026-12-17', from: '2026-11-26' }],
      },
      { id: 'alder', windows: [{ item: 'alder-oil', state: 'unknown' }] },
    ],
  });

  const order = await run('order', ...household);
  // By hand: only the brake fluid is due; 990 and 495 delivery, for 1485 is below the free limit of 6000.
  expect(order.json).toMatchObject({ status: 'optimal', totalMinor: 1485, goodsMinor: 990, deliveryMinor: 495, lines: [{ offer: 'o2', packs: 1 }], unmet: [] });

  const record = file('record.json', { car: 'pip', doneBy: 'keeper', reading: { value: 33_900, unit: 'mi' }, lines: [{ item: 'pip-fluid', minutes: 45 }], costs: [{ kind: 'parts', text: 'fluid', amountMinor: 990 }] });
  expect((await run('record', record, ...household)).json).toMatchObject({ record: { title: 'Brake fluid' } });
  expect((await run('due', ...household)).json).toMatchObject({ cars: [{}, {}] });
  const after = (await run('due', ...household)).json as unknown as { cars: { id: string; windows: { likely: string }[] }[] };
  expect(after.cars.find((car) => car.id === 'pip')?.windows[0]?.likely).toBe('2028-11-25');

  const pack = await run('pack', 'pip', '--out', join(folder, 'out'), ...household);
  const { path, seal } = pack.json as unknown as { path: string; seal: string };
  expect((await run('check', path)).json).toMatchObject({ sound: true, faults: [] });
  expect((await run('check', path, '--seal', seal)).json).toMatchObject({ sound: true, faults: [] });
  const bytes = readFileSync(path);
  bytes.writeUInt8(bytes.readUInt8(4000) ^ 1, 4000);
  writeFileSync(join(folder, 'changed.zip'), bytes);
  expect(await run('check', join(folder, 'changed.zip'))).toMatchObject({ status: 1, json: { sound: false } });

  expect((await run('backup', ...household)).status).toBe(0);
  expect((await run('examine', ...household)).json).toMatchObject({ faults: [] });
}, 120_000);
