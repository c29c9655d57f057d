import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../host/open-test-host.ts';
import { jsonOf, runCommand, runProcess, type Ran } from './run-command.ts';

let folder = '';
const at = () => ['--household', join(folder, 'household'), '--on', '2026-11-25'];
const on = (...words: readonly string[]): Promise<Ran> => runCommand(...words, ...at());

function file(name: string, content: string | Buffer): string {
  writeFileSync(join(folder, name), content);
  return join(folder, name);
}

const START = [
  { operation: 'household.start', request: { name: 'Ours', unit: 'mi', currency: 'GBP' } },
  { operation: 'car.add', request: { id: 'pip', name: 'Pip', firstRegistered: '2022-11-25', keptSince: '2022-11-25' } },
  { operation: 'item.add', request: { id: 'fluid', car: 'pip', name: 'Brake fluid', history: 'unknown', interval: { repeat: { months: 24, distance: null } } } },
];

beforeEach(async () => {
  folder = temporaryFolder();
  const ran = await on('enter', file('start.json', JSON.stringify(START)));
  if (ran.status !== 0) throw new Error(ran.said);
});

describe('import', () => {
  test('previews: how the table was read, the first rows, every bad row by line; nothing is stored', async () => {
    const ran = await on('import', file('old.csv', 'Date;Miles;Work;Colour\n25/3/2025;12 500;brake fliud;red\n31/3/2025;x;;\n30/3/2025;12 600;wash;\n'));
    expect([ran.status, ran.said]).toEqual([0, '']);
    expect(ran.out.replace(/\u202f/g, ' ')).toBe([
      '3 rows: 2 would be stored, 0 with a doubtful reading, 0 stand already, 1 refused.',
      'Read as: UTF-8; parted by semicolons; with a head; columns date=1,reading=2,work=3; dates day, month, year (25/3/2025 in line 2 is a date in this order only); readings in mi; left out: Colour.',
      'The first rows as understood:',
      '  line 2: pip, 25 Mar 2025, 12 500 mi, Brake fluid',
      '  line 4: pip, 30 Mar 2025, 12 600 mi, "wash"',
      '  line 3 refused, 31 Mar 2025: That is not a distance: it must be a number from 0 to 10 000 000 km. (not-a-distance)',
      '  "brake fliud" is taken for Brake fluid.',
      'Lines of their own: "wash".',
      'Nothing is stored yet; --keep stores it.',
      '',
    ].join('\n'));
    expect(jsonOf(await on('examine', '--json'))).toMatchObject({ entries: 3 });
  });

  test('asks what is open, and names the option that answers it', async () => {
    const path = file('open.csv', 'date,reading\n3/4/2025,"12,500"\n');
    const ran = await on('import', path);
    expect(ran.status).toBe(0);
    expect(ran.out).toMatch(/\? Every date can be read .*3\/4\/2025 in line 2.*\n {4}--date-order dmy {2}day, month, year: 3\/4\/2025 = 3 Apr 2025/);
    expect(ran.out).toMatch(/\? 12,500 in line 2 may mean thousands.*\n {4}--decimal-mark \. .*\(likely: An odometer seldom shows three decimals\.\)/);
    expect(ran.out).toMatch(/Nothing is stored\.\n$/);
    const kept = await on('import', path, '--keep', '--json');
    expect(kept.status).toBe(1);
    expect(jsonOf(kept)).toMatchObject({ refused: { code: 'import-questions-open', values: { count: 2 } } });
    expect(jsonOf(await on('import', path, '--date-order', 'mdy', '--decimal-mark', '.', '--json'))).toMatchObject({ ready: true, first: [{ date: '2025-03-04', reading: { value: 12_500, unit: 'mi' } }] });
  });

  test('keeps, lists, and withdraws the whole', async () => {
    const path = file('old.csv', 'date,miles,work\n2025-03-25,12500,\n2025-06-25,14000,brake fluid\n');
    const kept = await on('import', path, '--keep', '--json');
    const { import: id } = jsonOf(kept) as { import: string };
    expect(jsonOf(kept)).toMatchObject({ counts: { readings: 2, records: 1 }, undo: [3, 4, 5, 6] });
    expect((await on('import', '--list')).out).toBe(`${id}  25 Nov 2026  old.csv: 2 readings, 1 records\n`);
    expect((await on('import', path)).out).toContain('Skipped, for they stand already or are said twice: lines 2 to 3.');
    expect((await on('import', path, '--keep', '--json')).status).toBe(1);
    expect(await on('import', '--withdraw', id)).toEqual({ status: 0, out: 'Withdrawn: 4 entries.\n', said: '' });
    expect((await on('import', '--list')).out).toBe('No import stands.\n');
    expect(jsonOf(await on('import', '--withdraw', id, '--json'))).toMatchObject({ refused: { code: 'unknown-import' } });
    expect((await on('import', path, '--keep')).out).toMatch(/^Stored: 2 readings and 1 records as import \S+\.\n"import --withdraw \S+" takes all of it back\.\n$/);
    expect(jsonOf(await on('examine', '--json'))).toMatchObject({ faults: [] });
  });

  test('takes what is said of columns, unit, delimiter, head and items', async () => {
    const path = file('odd.csv', '20000|2025-03-25|flush|9.50\n');
    const ran = await on('import', path, '--columns', 'date=2,reading=1,work=3,cost=4,note=none', '--unit', 'km', '--delimiter', '|', '--no-header', '--items', 'flush=fluid;wash=', '--car', 'Pip', '--json');
    expect(jsonOf(ran)).toMatchObject({ ready: true, first: [{ line: 1, reading: { value: 20_000, unit: 'km' }, costMinor: 950, lines: [{ text: 'flush', item: 'fluid' }] }] });
    const headed = file('tab.csv', 'date\tmiles\n2025-03-25\t9\n');
    expect(jsonOf(await on('import', headed, '--delimiter', 'tab', '--header', '--json'))).toMatchObject({ ready: true, counts: { rows: 1 } });
    expect(jsonOf(await on('import', headed, '--no-header', '--columns', 'date=1,reading=2', '--json'))).toMatchObject({ detected: { hasHeader: { value: false, by: 'choice' } }, counts: { rows: 2, refused: 1 } });
  });

  test('reads standard input, and bytes of an old encoding', async () => {
    const ran = await runProcess(['import', '-', '--json', ...at()], ['date,miles\n', '2025-03-25,12500\n']);
    expect(jsonOf(ran)).toMatchObject({ file: null, counts: { stored: 1 } });
    expect(jsonOf(await on('import', file('latin.csv', Buffer.from('date,miles,note\n2025-03-25,9,caf\xe9\n', 'latin1')), '--json'))).toMatchObject({ detected: { encoding: 'Windows-1252' }, first: [{ note: 'café' }] });
  });

  test.each([
    { case: 'no file', words: [], why: 'import takes one file.' },
    { case: 'a file and a list', words: ['x.csv', '--list'], why: 'import takes either' },
    { case: 'an order that is none', words: ['x.csv', '--date-order', 'dym'], why: "'--date-order' takes ymd or dmy or mdy" },
    { case: 'a unit that is none', words: ['x.csv', '--unit', 'm'], why: "'--unit' takes km or mi" },
    { case: 'a delimiter that is none', words: ['x.csv', '--delimiter', 'x'], why: "'--delimiter' takes" },
    { case: 'a mark that is none', words: ['x.csv', '--decimal-mark', ';'], why: "'--decimal-mark' takes" },
    { case: 'a column that is none', words: ['x.csv', '--columns', 'odometer=1'], why: "not \"odometer=1\"" },
    { case: 'a column 0', words: ['x.csv', '--columns', 'date=0'], why: 'not "date=0"' },
    { case: 'an item without a text', words: ['x.csv', '--items', '=fluid'], why: "'--items' takes pairs" },
    { case: 'a head and none', words: ['x.csv', '--header', '--no-header'], why: 'exclude each other' },
  ])('is used wrongly with $case', async ({ words, why }) => {
    const ran = await on('import', ...words);
    expect([ran.status, ran.out]).toEqual([2, '']);
    expect(ran.said).toContain(why);
  });

  test('refuses a file that is not there', async () => {
    expect(jsonOf(await on('import', join(folder, 'none.csv'), '--json'))).toMatchObject({ refused: { code: 'file-unreadable' } });
  });

  test('tells how it is used', async () => {
    expect((await runCommand('import', '--help')).out).toMatch(/--columns .*date, reading, unit, car, work, outcome, cost, place, by, note\n[^]*--withdraw/);
  });
});
