import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { contract, operationNames } from '../../shared-core/contract/contract.ts';
import { paperPath } from '../../electron/papers/write-paper.ts';
import { temporaryFolder } from '../host/open-test-host.ts';
import { jsonOf, runCommand, type Ran } from './run-command.ts';

let folder = '';
const on = (...words: readonly string[]): Promise<Ran> => runCommand(...words, '--household', join(folder, 'household'), '--on', '2026-11-25');

function file(name: string, content: unknown): string {
  writeFileSync(join(folder, name), typeof content === 'string' ? content : JSON.stringify(content));
  return join(folder, name);
}

const START = [
  { operation: 'household.start', request: { name: 'Ours', unit: 'mi' } },
  { operation: 'car.add', request: { id: 'pip', name: 'Pip', firstRegistered: '2022-11-25', keptSince: '2022-11-25' } },
  { operation: 'reading.record', request: { car: 'pip', value: 9000, date: '2024-01-10' } },
  { operation: 'reading.record', request: { car: 'pip', value: 18_000, date: '2025-01-10' } },
];

beforeEach(async () => {
  folder = temporaryFolder();
  const ran = await on('enter', file('start.json', START), '--json');
  if (ran.status !== 0) throw new Error(ran.said);
});

describe('enter', () => {
  test('prints the names and schemas of every change of the contract', async () => {
    const ran = await runCommand('enter', '--list', '--json');
    const { operations } = jsonOf(ran) as { operations: { operation: string; request: { type: string; properties: object }; reply: object }[] };
    expect([ran.status, ran.said]).toEqual([0, '']);
    expect(operations.map((one) => one.operation)).toEqual(operationNames.filter((name) => contract[name].kind === 'do'));
    expect(operations.find((one) => one.operation === 'reading.record')).toMatchObject({ request: { type: 'object', required: ['car', 'value'], additionalProperties: false, properties: { unit: { enum: ['km', 'mi'] } } } });
    expect((await runCommand('enter', '--list')).out).toContain('reading.record\n{');
  });

  test('one change answers its reply with its undo token; text says how many', async () => {
    const one = file('one.json', { operation: 'car.change', request: { id: 'pip', name: 'Pipkin' } });
    const ran = await on('enter', one, '--json');
    expect([ran.status, ran.said]).toEqual([0, '']);
    expect(jsonOf(ran)).toMatchObject({ car: { id: 'pip', name: 'Pipkin' }, undo: [4] });
    expect(await on('enter', one)).toEqual({ status: 0, out: '1 entered.\n', said: '' });
  });

  test('a list stops at the first refusal, and says what was entered before it', async () => {
    const ran = await on('enter', file('list.json', [
      { operation: 'supplier.set', request: { id: 'north', name: 'North', leadDays: 3 } },
      { operation: 'observation.note', request: { car: 'pip', text: 'a rattle' } },
      { operation: 'observation.note', request: { car: 'nobody', text: 'a rattle' } },
      { operation: 'observation.note', request: { car: 'pip', text: 'another' } },
    ]), '--json');
    expect(ran.status).toBe(1);
    expect(jsonOf(ran)).toMatchObject({ entered: [{ operation: 'supplier.set', reply: { undo: [4] } }, { operation: 'observation.note', reply: { undo: [5] } }], refused: { at: 2, operation: 'observation.note', code: 'unknown-car', values: { car: 'nobody' } } });
    expect(ran.said).toBe('Entry 3 of 4 (observation.note) is refused: There is no car nobody here. Check its name. The 2 before it are entered. (entry-refused)\n');
    expect(jsonOf(await on('examine', '--json'))).toMatchObject({ entries: 6, faults: [] });
  });

  test('takes a paper by its file, beside the list that names it', async () => {
    mkdirSync(join(folder, 'papers'));
    file(join('papers', 'receipt.txt'), 'a receipt');
    const ran = await on('enter', file('paper.json', { operation: 'paper.keep', request: { file: 'papers/receipt.txt' } }), '--json');
    const { paper } = jsonOf(ran) as { paper: { id: string; name: string } };
    expect(paper.name).toBe('receipt.txt');
    expect(readFileSync(paperPath(join(folder, 'household'), paper.id), 'utf8')).toBe('a receipt');
    const gone = await on('enter', file('gone.json', { operation: 'paper.keep', request: { file: 'papers/gone.txt' } }), '--json');
    expect(jsonOf(gone)).toMatchObject({ entered: [], refused: { code: 'file-unreadable' } });
  });

  test.each([
    { case: 'a file that is not there', content: null, code: 'file-unreadable' },
    { case: 'a file that is not JSON', content: '{"operation": ', code: 'file-not-json' },
    { case: 'an empty file', content: '', code: 'file-not-json' },
    { case: 'a file that is not text', content: '\xff', code: 'file-not-text' },
    { case: 'a number', content: '7', code: 'not-understood' },
    { case: 'a change without its name', content: '{"request": {}}', code: 'not-understood' },
    { case: 'a change with one field more', content: '{"operation": "car.add", "request": {}, "note": 1}', code: 'unknown-field' },
    { case: 'a name that is not there', content: '{"operation": "car.sell"}', code: 'unknown-operation' },
    { case: 'a name of the program\'s own parts', content: '{"operation": "toString"}', code: 'unknown-operation' },
    { case: 'something that only asks', content: '{"operation": "due.show"}', code: 'unknown-operation' },
    { case: 'a request that its schema refuses', content: '{"operation": "car.add", "request": {"name": ""}}', code: 'text-empty' },
  ])('$case is refused with its code, and nothing is entered', async ({ content, code }) => {
    const path = join(folder, 'given.json');
    if (content !== null) writeFileSync(path, Buffer.from(content, 'latin1'));
    const ran = await on('enter', path, '--json');
    expect(ran.status).toBe(1);
    expect(jsonOf(ran)).toMatchObject({ refused: { code, text: expect.stringMatching(/\S\.$/) as string } });
    expect(ran.said).toMatch(new RegExp(`\\(${code}\\)\\n$`));
    expect(jsonOf(await on('examine', '--json'))).toMatchObject({ entries: 4, faults: [] });
  });

  test('an empty list is done with', async () => {
    expect(jsonOf(await on('enter', file('none.json', []), '--json'))).toEqual({ entered: [] });
  });
});

describe('reading', () => {
  test('records a value with its unit and day', async () => {
    expect(jsonOf(await on('reading', 'Pip', '27 000', '--date', '2026-01-10', '--json'))).toMatchObject({ state: 'accepted', code: null, repairs: [], reading: { typed: { value: 27_000, unit: 'mi' }, date: '2026-01-10', standing: 'accepted' } });
    expect(jsonOf(await on('reading', 'pip', '55000.5', '--unit', 'km', '--json'))).toMatchObject({ reading: { typed: { value: 55_000.5, unit: 'km' }, date: '2026-11-25' } });
    expect((await on('reading', 'pip', '32000', '--date', '2026-09-01')).out).toMatch(/^Recorded: 32.000 mi on 1 Sep 2026\.\n$/);
  });

  test('keeps a doubtful value, sets it aside, and asks: status 0', async () => {
    const ran = await on('reading', 'pip', '2700', '--date', '2026-01-10', '--json');
    expect([ran.status, ran.said]).toEqual([0, '']);
    expect(jsonOf(ran)).toMatchObject({ state: 'set-aside', code: 'decrease', repairs: expect.arrayContaining([27_000]) as number[] });
    const text = await on('reading', 'pip', '2701', '--date', '2026-01-11');
    expect(text.out).toMatch(/^Kept and set aside: .*\n.*--sure.*--replaced\.\n$/);
    expect(jsonOf(await on('due', '--json'))).toMatchObject({ cars: [{ doubtful: [{ value: 2700 }, { value: 2701 }] }] });
  });

  test('takes it where the keeper is sure, or the instrument is new', async () => {
    expect(jsonOf(await on('reading', 'pip', '260000', '--date', '2026-01-10', '--sure', '--json'))).toMatchObject({ state: 'accepted', code: null, reading: { sure: true, doubt: 'too-high' } });
    expect(jsonOf(await on('reading', 'pip', '12', '--date', '2026-02-10', '--replaced', '--json'))).toMatchObject({ state: 'accepted', reading: { instrument: expect.any(String) as string } });
    expect(jsonOf(await on('reading', 'pip', '900', '--date', '2026-04-10', '--json'))).toMatchObject({ state: 'accepted' });
  });

  test.each([
    { case: 'an unknown car', words: ['nobody', '1'], code: 'unknown-car' },
    { case: 'a day to come', words: ['pip', '1', '--date', '2026-11-26'], code: 'date-in-future' },
    { case: 'a day that is none', words: ['pip', '1', '--date', '2026-13-01'], code: 'not-a-date' },
    { case: 'a day before the car was registered', words: ['pip', '1', '--date', '2022-11-24'], code: 'before-registration' },
    { case: 'an absurd distance', words: ['pip', '99999999999'], code: 'not-a-distance' },
  ])('$case is refused: status 1', async ({ words, code }) => {
    const ran = await runCommand('reading', '--household', join(folder, 'household'), '--on', '2026-11-25', '--json', ...words);
    expect(ran.status).toBe(1);
    expect(jsonOf(ran)).toMatchObject({ refused: { code } });
    expect(ran.said).toContain(`(${code})`);
  });
});

describe('due', () => {
  test('answers as HEADLESS.md says, for a forecast and for a late item', async () => {
    await on('enter', file('items.json', [
      { operation: 'item.add', request: { id: 'fluid', car: 'pip', name: 'Brake fluid', history: 'never-done', interval: { first: { months: 36, distance: null }, repeat: { months: 24, distance: null } } } },
      { operation: 'item.add', request: { id: 'oil', car: 'pip', name: 'Oil', history: 'never-done', interval: { repeat: { months: null, distance: { value: 40_000, unit: 'mi' } } } } },
      { operation: 'item.add', request: { id: 'coolant', car: 'pip', name: 'Coolant', interval: { repeat: { months: 60, distance: null } } } },
      { operation: 'obligation.add', request: { car: 'pip', kind: 'road-tax', lastValidDay: '2026-12-31' } },
    ]));
    const ran = await on('due', '--json');
    const due = jsonOf(ran) as { today: string; cars: { windows: Record<string, unknown>[] }[] };
    expect([ran.status, ran.said, due.today]).toEqual([0, '', '2026-11-25']);
    const [car] = due.cars;
    expect(car).toMatchObject({ id: 'pip', name: 'Pip', odometer: { low: expect.any(Number) as number, likely: expect.any(Number) as number, high: expect.any(Number) as number, unit: 'mi' }, obligations: [{ kind: 'road-tax', on: '2026-12-31', from: '2026-12-17' }], doubtful: [] });
    const [late, ahead, unknown] = ['fluid', 'oil', 'coolant'].map((item) => car?.windows.find((window) => window['item'] === item));
    expect(late).toMatchObject({ state: 'late', limb: 'time', earliest: '2025-11-25', likely: '2025-11-25', latest: '2025-11-25', lateBy: { days: 365, months: 12, distance: null }, reason: { code: expect.stringMatching(/^reason-/) as string, values: {}, text: expect.stringMatching(/\.$/) as string } });
    expect(ahead).toMatchObject({ limb: 'distance', lateBy: null, earliest: expect.stringMatching(/^\d{4}-\d\d-\d\d$/) as string, arrangeFrom: expect.stringMatching(/^\d{4}-\d\d-\d\d$/) as string });
    expect(unknown).toMatchObject({ state: 'unknown', earliest: null, likely: null, latest: null, arrangeFrom: null, limb: null, lateBy: null });
    expect(car?.windows.map((window) => window['state'])).toEqual(['late', expect.stringMatching(/ahead|open|probably-due/), 'unknown']);
  });

  test('says it in text, soonest first', async () => {
    await on('enter', file('items.json', [{ operation: 'item.add', request: { id: 'fluid', car: 'pip', name: 'Brake fluid', history: 'never-done', interval: { repeat: { months: 36, distance: null } } } }]));
    const { status, out } = await on('due');
    expect(status).toBe(0);
    expect(out).toMatch(/^Due on 25 Nov 2026, soonest first\n\s+late\s+Pip: Brake fluid/);
  });

  test('tells follow-ups, in JSON and in text, until they are ticked', async () => {
    await on('enter', file('again.json', [
      { operation: 'follow-up.add', request: { id: 'level', car: 'pip', text: 'Level when warm', days: 1 } },
      { operation: 'follow-up.add', request: { id: 'screw', car: 'pip', text: 'Missed one screw', madeOn: '2026-11-01', dueOn: '2026-11-20' } },
      { operation: 'follow-up.add', request: { id: 'leaks', car: 'pip', text: 'Look for leaks', days: 0 } },
      { operation: 'follow-up.done', request: { followUp: 'leaks' } },
    ]));
    const [car] = (jsonOf(await on('due', '--json')) as { cars: { followUps: object[] }[] }).cars;
    expect(car?.followUps).toMatchObject([
      { followUp: { id: 'screw', text: 'Missed one screw' }, state: 'late', limb: 'time', lateBy: { days: 5, months: 0, distance: null }, text: 'Its day was 20 Nov 2026: 5 days late.' },
      { followUp: { id: 'level', dueOn: '2026-11-26' }, state: 'ahead', likely: '2026-11-26', lateBy: null, text: 'On 26 Nov 2026.' },
    ]);
    const { out } = await on('due');
    expect(out).toMatch(/^ {2}late {4}Pip: look again, Missed one screw\. Its day was 20 Nov 2026: 5 days late\.\n {2}ahead {3}Pip: look again, Level when warm\. On 26 Nov 2026\.$/m);
    expect(out).not.toContain('leaks');
  });

  test('tells recalls, distance allowances and printed expiries, in JSON and in text', async () => {
    await on('enter', file('duties.json', [
      { operation: 'recall.set', request: { car: 'pip', number: 'R-104', what: 'Seat belt anchor' } },
      { operation: 'recall.set', request: { car: 'pip', number: 'R-90', what: 'Fuel pipe', nextOn: '2027-03-20' } },
      { operation: 'recall.set', request: { car: 'pip', number: 'R-7', what: 'Horn', doneOn: '2026-05-04', how: 'Horn replaced' } },
      { operation: 'allowance.set', request: { car: 'pip', kind: 'insurance', distance: { value: 2000, unit: 'mi' }, from: '2026-08-01' } },
      { operation: 'obligation.add', request: { car: 'pip', kind: 'printed-expiry', name: 'first-aid kit', lastValidDay: '2027-06-30', months: null, noticeDays: 30 } },
      { operation: 'first-test.add', request: { car: 'pip', years: 5 } },
    ]));
    const [car] = (jsonOf(await on('due', '--json')) as { cars: { allowances: object[]; recalls: object[]; obligations: object[] }[] }).cars;
    expect(car?.recalls).toMatchObject([{ state: 'open', late: false, recall: { number: 'R-104' } }, { state: 'booked', arrangeFrom: '2027-03-06', recall: { number: 'R-90' } }]);
    expect(car?.allowances).toMatchObject([{ kind: 'insurance', state: 'probably-passed', from: '2026-08-01', to: '2027-07-31', allowed: 2000, unit: 'mi', passes: { likely: expect.stringMatching(/^2026-/) as string } }]);
    expect(car?.obligations).toMatchObject([{ kind: 'printed-expiry', on: '2027-06-30', from: '2027-05-31' }, { kind: 'roadworthiness-test', on: '2027-11-25', from: '2027-10-26', opens: '2027-10-26' }]);
    const { out } = await on('due');
    expect(out).toMatch(/^ {2}open {2}Pip: Seat belt anchor\. Recall R-104 is not done\. Book it\. Arrange from .+\.$/m);
    expect(out).toMatch(/^ {2}by {4}Pip: Fuel pipe\. Recall R-90 is booked for 20 Mar 2027\. Arrange from 6 Mar 2027\.$/m);
    expect(out).not.toContain('R-7');
    expect(out).toMatch(/^ {2}\? {5}Pip: insured distance\. As the car is used now, the 2000 mi allowed have probably been passed, .+\. Used about [\d\u202f]+ of 2000 mi, left about 0 mi\. Arrange from .+\.$/m);
    expect(out).toMatch(/^ {2}by {4}Pip: first-aid kit, 30 Jun 2027; arrange from 31 May 2027$/m);
    expect(out).not.toMatch(/undefined|null|NaN|\{/);
  });

  test('a folder without a household is refused: a mistyped name must not read as nothing due', async () => {
    const answer = await runCommand('due', '--household', join(folder, 'new'), '--on', '2026-11-25', '--json');
    expect(answer.status).toBe(1);
    expect(jsonOf(answer)).toMatchObject({ refused: { code: 'household-not-started' } });
  });
});

describe('record, examine, backup', () => {
  test('work is recorded from a file', async () => {
    expect(jsonOf(await on('record', file('work.json', { car: 'pip', lines: [{ name: 'Bulb' }] }), '--json'))).toMatchObject({ record: { title: 'Bulb', date: '2026-11-25' }, reading: null, undo: [4] });
    const refused = await on('record', file('work.json', { car: 'pip', lines: [] }), '--json');
    expect(refused.status).toBe(1);
    expect(jsonOf(refused)).toMatchObject({ refused: { code: 'not-understood', path: ['lines'] } });
  });

  test('examine names every fault: status 1, its report as JSON', async () => {
    await on('enter', file('paper.json', { operation: 'paper.keep', request: { name: 'a.txt', base64: 'AAAA' } }));
    expect(await on('examine')).toEqual({ status: 0, out: '5 entries and 1 papers examined: all as it should be.\n', said: '' });
    const [place = ''] = readdirSync(join(folder, 'household', 'papers'));
    rmSync(join(folder, 'household', 'papers', place), { recursive: true });
    const ran = await on('examine', '--json');
    expect(ran.status).toBe(1);
    expect(jsonOf(ran)).toMatchObject({ entries: 5, papers: 1, faults: [{ where: expect.stringMatching(/^paper a\.txt/) as string, what: 'is missing' }] });
    expect(ran.said).toMatch(/is missing.*\(not-sound\)\n$/);
  });

  test('a backup is a household of its own', async () => {
    const { folder: copy } = jsonOf(await on('backup', '--json')) as { folder: string };
    const again = jsonOf(await on('backup', '--json')) as { folder: string };
    expect(again.folder).not.toBe(copy);
    for (const one of [copy, again.folder]) expect(jsonOf(await runCommand('examine', '--household', one, '--json'))).toMatchObject({ entries: 4, faults: [] });
    expect(existsSync(join(copy, 'key'))).toBe(true);
  });
});

describe('forecast and backtest on files that are not as they should be', () => {
  test.each([
    { case: 'that is not there', content: null, code: 'file-unreadable' },
    { case: 'that is empty', content: '', code: 'log-empty' },
    { case: 'of a head alone', content: 'date,km\n', code: 'log-empty' },
    { case: 'with a cell too many', content: 'date,km\n2024-01-01,5,6\n', code: 'log-line-columns' },
    { case: 'with a day that is none', content: 'date,km\n2024-02-30,5\n', code: 'log-line-date' },
    { case: 'with a value that is none', content: 'date,km\n2024-01-01,five\n', code: 'log-line-km' },
    { case: 'that is not text', content: '\xff\xfe', code: 'file-not-text' },
  ])('a file $case', async ({ content, code }) => {
    const path = join(folder, 'log.csv');
    if (content !== null) writeFileSync(path, Buffer.from(content, 'latin1'));
    const forecast = await runCommand('forecast', path, '--on', '2024-06-01', '--add-km', '5000', '--json');
    expect([forecast.status, jsonOf(forecast)]).toMatchObject([1, { refused: { code } }]);
    const backtest = await runCommand('backtest', path, '--json');
    expect(backtest.status).toBe(1);
    expect((jsonOf(backtest)['refused'] as { code: string }).code).toBe(content === null || code === 'file-not-text' ? code : 'file-refused');
    expect(backtest.said).not.toBe('');
  });

  test('a file that falls cannot be tested against, and says the line', async () => {
    const ran = await runCommand('backtest', file('falls.csv', 'date,km\n2024-01-01,9000\n2024-03-01,8000\n2024-06-01,9500\n'), '--json');
    expect([ran.status, jsonOf(ran)]).toMatchObject([1, { refused: { code: 'log-falls', values: { line: 3 } } }]);
  });

  test('the second of two files is named where it is at fault', async () => {
    const good = file('good.csv', 'date,km\n2024-01-01,1000\n2024-03-01,2000\n2024-06-01,3000\n2024-09-01,4000\n');
    const ran = await runCommand('backtest', good, file('bad.csv', 'x'), '--json');
    expect(ran.status).toBe(1);
    expect(jsonOf(ran)).toMatchObject({ refused: { values: { file: expect.stringMatching(/bad\.csv$/) as string } } });
  });

  test('a good file is forecast as HEADLESS.md says', async () => {
    const ran = await runCommand('forecast', file('good.csv', 'date,km\n2024-01-01,1000\n2024-03-01,2000\n2024-06-01,3000\n'), '--on', '2024-06-10', '--add-km', '5000', '--json');
    expect([ran.status, ran.said]).toEqual([0, '']);
    expect(Object.keys(jsonOf(ran))).toEqual(['ratePerSeasonDay', 'exposure', 'lastReading', 'odometer', 'due', 'setAside']);
    expect(jsonOf(ran)).toMatchObject({ lastReading: { date: '2024-06-01', km: 3000 }, setAside: [] });
  });
});

describe('calendar', () => {
  const uids = (text: string) => text.split('\r\n').filter((line) => line.startsWith('UID:'));
  const due = { operation: 'obligation.add', request: { id: 'tax', car: 'pip', kind: 'road-tax', lastValidDay: '2027-03-31' } };

  test('prints a calendar file, or writes it; written again the same events keep their UIDs', async () => {
    await on('enter', file('due.json', due));
    const printed = await on('calendar');
    expect([printed.status, printed.out.startsWith('BEGIN:VCALENDAR\r\n'), printed.out.endsWith('END:VCALENDAR\r\n'), uids(printed.out).length]).toEqual([0, true, true, 1]);
    const out = join(folder, 'cars.ics');
    expect(await on('calendar', '--out', out)).toEqual({ status: 0, out: `1 event: ${out}\n`, said: '' });
    await on('enter', file('more.json', { operation: 'obligation.renew', request: { obligation: 'tax', on: '2026-11-20', lastValidDay: '2028-03-31' } }));
    expect((await on('calendar', '--out', out, '--json')).status).toBe(0);
    expect(uids(readFileSync(out, 'utf8'))).toEqual(uids(printed.out));
    expect(readFileSync(out, 'utf8')).toContain('DTSTART;VALUE=DATE:20280331');
  });

  test('leaves a file that is no calendar as it is, and refuses what cannot be', async () => {
    const other = file('letter.txt', 'Dear all');
    expect(await on('calendar', '--out', other)).toMatchObject({ status: 1, said: expect.stringContaining('stands a file that is no calendar') as string });
    expect(readFileSync(other, 'utf8')).toBe('Dear all');
    expect((await on('calendar', '--out', join(folder, 'no', 'such', 'cars.ics'))).status).toBe(1);
    expect((await on('calendar', '--months', 'many')).status).toBe(2);
    expect(await on('calendar', '--months', '61')).toMatchObject({ status: 1, said: expect.stringContaining('from 1 to 60 months ahead') as string });
    expect((await on('calendar', 'extra')).status).toBe(2);
  });
});
