import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { composeHost } from '../../electron/host/compose-host.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { day } from '../shared-core/calendar/day.ts';
import type { OperationName, RequestOf } from '../../shared-core/contract/contract.ts';
import { mustAsk } from './ask-host.ts';
import { Keyboard } from './keyboard.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openServedPage, type ServedPage } from './served-page.ts';
import { soundAtEverySize } from './sound-at-every-size.ts';


const SEMICOLONS = 'Datum;Stand;Tank\n13.02.2020;17.000,5;voll\n05.03.2021;25.050,0;\n31.11.2021;30.000,0;\n05.03.2022;3.310,0;halb\n';
const TABS = 'date\tmiles\tnote\n2023-03-01\t40500\tafter the trip\n2023-09-01\t44100\t\n';
/** In the order month, day, year the first row says the reading that stands; in the other order it is of October. */
const EITHER_WAY = 'date,odometer\n01/10/2019,9000\n03/04/2019,10100\n05/06/2019,11020\n';
const HISTORY = 'date,odometer,work,cost,garage\n2020-06-01,19500,Engine oil and fliter; wash,45,Hill Garage\n2021-06-01,27000,Coolant change,89.90,\n2022-06-01,34500,Brake,,\n2023-06-01,4200,wash,,\n2024-02-30,1,wash,,\n';
const LONG_HEAD = 'What the neighbour who stood beside it said of the weather and of the road and of the car on that day';

/** 2 000 rows in 12 columns; every fortieth has no reading. */
function longTable(): string {
  const rows = Array.from({ length: 2000 }, (_, at) => {
    const date = new Date(Date.UTC(2019, 0, 12 + at)).toISOString().slice(0, 10);
    return [date, at % 40 === 7 ? '?' : String(9030 + at * 20), ...Array.from({ length: 10 }, (_each, column) => `cell ${column}`)].join(',');
  });
  return `date,miles,${LONG_HEAD},d,e,f,g,h,i,j,k,l\n${rows.join('\n')}\n`;
}

async function fillHousehold(folder: string): Promise<void> {
  const host = composeHost(folder, realWorld(day('2026-11-25')));
  if (!host.ok) throw new Error(host.refusal.code);
  const must = async (operation: string, request: unknown) => {
    const reply = await host.value.call(operation as never, request as never);
    if (!reply.ok) throw new Error(`${operation}: ${JSON.stringify(reply.refusal)}`);
  };
  await must('household.start', { name: 'Test household', unit: 'mi', currency: 'GBP', locale: 'en-GB' });
  await must('car.add', { id: 'pip', name: 'Pip', firstRegistered: '2018-03-01', keptSince: '2018-03-01' });
  await must('car.add', { id: 'alder', name: 'Alder', unit: 'km', firstRegistered: '2018-03-01', keptSince: '2018-03-01' });
  for (const [id, name] of [['oil', 'Engine oil and filter'], ['fluid', 'Brake fluid'], ['coolant', 'Coolant'], ['coolant-check', 'Coolant check']]) {
    await must('item.add', { id, car: 'pip', name, history: 'unknown', interval: { repeat: { months: 24, distance: null } } });
  }
  await must('reading.record', { id: 'r1', car: 'pip', value: 9000, date: '2019-01-10' });
  await must('reading.record', { id: 'r2', car: 'pip', value: 54_000, date: '2025-01-10' });
  await host.value.close();
}

/** Tables of several shapes, taken in by mouse and by keyboard; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('a table taken in', () => {
  let served: ServedPage;
  let page: Page;
  let keys: Keyboard;

  beforeAll(async () => {
    served = await openServedPage({ fill: fillHousehold });
    page = served.page;
    await page.getByRole('heading', { name: 'The yard' }).waitFor({ timeout: 50_000 });
    keys = new Keyboard(page);
  });
  afterAll(() => served.close());

  const button = (name: string | RegExp) => page.getByRole('button', { name });
  const region = (name: string | RegExp) => page.getByRole('region', { name });
  const outcome = () => region('What comes of it');
  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).waitFor();
  /** From the disk: many megabytes handed over in a message take a slow machine too long. */
  const choose = async (name: string, text: string | Buffer) => {
    const file = join(dirname(served.household), name);
    writeFileSync(file, text);
    await page.locator('input[type=file]').setInputFiles(file);
  };
  const title = () => page.getByRole('heading', { name: 'Take in a table', level: 1 }).waitFor();
  const focused = () => page.evaluate(() => document.activeElement?.id ?? '');
  /** What the host itself answers, past the page. */
  const host = <Name extends OperationName>(name: Name, request: RequestOf<Name>) => mustAsk(page, name, request);
  const entries = async () => (await host('household.examine', {})).entries;
  const readingsOfPip = async () => (await host('car.show', { car: 'pip' })).readings;

  async function openFrom(car: string, leaf: 'Care' | 'Distance and use'): Promise<void> {
    await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: 'Car' }).click();
    await page.getByRole('navigation', { name: 'Cars' }).getByRole('link', { name: car }).click();
    await page.getByRole('heading', { name: car, level: 1 }).waitFor();
    await page.getByRole('link', { name: leaf }).click();
    await region(leaf === 'Care' ? 'Work records' : 'Readings').getByRole('link', { name: 'Take in a table' }).click();
    await title();
  }
  test('of semicolons, commas and unknown heads is asked about, shown row by row, and stored by the button alone', async () => {
    await page.getByRole('link', { name: 'Settings' }).click();
    await page.getByRole('link', { name: 'Take in a table' }).click();
    await title();
    await region('Taken in before').getByText('No table was taken in yet.').waitFor();
    const before = await entries();
    await choose('old.csv', SEMICOLONS);
    await region('Answer first').getByText('2 things in the table are open.').waitFor();
    await expect.poll(focused).toBe('import-questions');
    await soundAtEverySize(page, 'the questions');
    await button('Take in the table').click();
    await outcome().getByRole('alert').filter({ hasText: 'Answer what is open first.' }).waitFor();
    await page.getByRole('group', { name: 'Which column holds the reading' }).getByRole('button', { name: /^column 2, Stand/ }).click();
    await expect.poll(focused).toBe('import-questions');
    await page.getByRole('group', { name: /^Of which car/ }).getByRole('button', { name: 'Pip' }).click();
    await outcome().getByText('3 readings of Pip will be taken in.').waitFor();
    await expect.poll(focused).toBe('import-outcome');
    await expect.poll(() => page.getByLabel('Between the columns stands').locator('option:checked').textContent()).toBe('as found: a semicolon');
    await expect.poll(() => page.getByLabel('Before parts of one stands').locator('option:checked').textContent()).toBe('as found: a comma: 41,5');
    await expect.poll(() => page.getByLabel('Dates are written').locator('option:checked').textContent()).toBe('as found: day, month, year');
    await region('How it was read').getByText('13.02.2020 in line 2 is a date in this order only').waitFor();
    await region(/^The first rows/).getByRole('row', { name: '2 13.02.2020 17.000,5 voll Pip, 13 Feb 2020, 17000.5 mi' }).waitFor();
    await outcome().getByRole('link', { name: '1 row cannot be taken in' }).click();
    await expect.poll(focused).toBe('import-refused');
    await region('Rows that cannot be taken in').getByRole('listitem').filter({ hasText: 'Line 4' }).getByText('31.11.2021 is no date. Write it as 2026-11-25.').waitFor();
    await outcome().getByRole('link', { name: '1 reading is in doubt' }).waitFor();
    await region('Readings in doubt').getByRole('listitem').filter({ hasText: 'Line 5' }).getByText('Pip, 5 Mar 2022, 3310 mi. It is lower than the reading before it.').waitFor();
    await soundAtEverySize(page, 'the table as understood');
    expect(await entries()).toBe(before);
    await button('Take in 3 readings').click();
    await said('Taken in: 3 readings of Pip.');
    await region('Taken in before').getByText('3 readings on 25 Nov 2026').waitFor();
    await expect.poll(focused).toBe('import-earlier');
    expect(await entries()).toBe(before + 4);
    expect((await readingsOfPip()).map(({ typed }) => typed.value).sort((a, b) => a - b)).toEqual([3310, 9000, 17_000.5, 25_050, 54_000]);
  });

  test('goes out whole by one Undo', async () => {
    await button('Undo').click();
    await said('Undone.');
    await region('Taken in before').getByText('No table was taken in yet.').waitFor();
    expect((await readingsOfPip()).map(({ id }) => id)).toEqual(['r2', 'r1']);
  });

  test('of tabs is pasted, taken in and withdrawn by the keyboard alone', async () => {
    await openFrom('Pip', 'Distance and use');
    await page.getByText('Rows that name no car are taken for Pip.').waitFor();
    await keys.press('Paste rows instead');
    await keys.press('Look at the rows');
    await page.getByRole('alert').filter({ hasText: 'Nothing is pasted yet.' }).waitFor();
    await page.getByLabel('Rows, the head first where there is one').focus();
    await page.evaluate((text) => document.execCommand('insertText', false, text), TABS);
    await keys.press('Look at the rows');
    await expect.poll(focused).toBe('import-outcome');
    await outcome().getByText('2 readings of Pip will be taken in.').waitFor();
    await expect.poll(() => page.getByLabel('Between the columns stands').locator('option:checked').textContent()).toBe('as found: a tab');
    await region(/^The first rows/).getByText('note: after the trip').waitFor();
    await keys.press('Take in 2 readings');
    await expect.poll(focused).toBe('import-earlier');
    await soundAtEverySize(page, 'a table taken in before');
    await keys.press('Withdraw pasted rows, taken in on 25 Nov 2026');
    await region('Taken in before').getByText('Withdraw all of it?').waitFor();
    await soundAtEverySize(page, 'the question before withdrawing');
    await keys.press('Leave it');
    await expect.poll(() => page.getByText('Withdraw all of it?').count()).toBe(0);
    expect(await readingsOfPip()).toHaveLength(4);
    await keys.press('Withdraw pasted rows, taken in on 25 Nov 2026');
    await keys.press('Withdraw all of it');
    await said('pasted rows is withdrawn, and with it all that it brought.');
    await expect.poll(focused).toBe('import-earlier');
    expect(await readingsOfPip()).toHaveLength(2);
    expect(keys.faults).toEqual([]);
  });

  test('whose dates can be read both ways is dropped, asks, guesses nothing, and names what is there already', async () => {
    const before = await entries();
    const transfer = await page.evaluateHandle((text) => {
      const data = new DataTransfer();
      data.items.add(new File([text], 'either.csv'));
      return data;
    }, EITHER_WAY);
    await page.getByRole('heading', { name: 'The table' }).dispatchEvent('drop', { dataTransfer: transfer });
    const asked = page.getByRole('group', { name: /^Every date can be read in more than one way, such as 01\/10\/2019 in line 2/ });
    await asked.getByRole('button', { name: /^day, month, year/ }).waitFor();
    await region(/^The first rows/).getByRole('row', { name: /^3 03\/04\/2019 10100 Pip waits for an answer/ }).waitFor();
    await outcome().getByText('Nothing is taken in yet.').waitFor();
    await asked.getByRole('button', { name: /^month, day, year 01\/10\/2019 = 10 Jan 2019/ }).press('Enter');
    await outcome().getByText('2 readings of Pip will be taken in.').waitFor();
    await outcome().getByRole('link', { name: '1 row is there already' }).click();
    await region('Rows that are there already').getByRole('listitem').filter({ hasText: 'Line 2' }).getByText('It stands already and is skipped.').waitFor();
    await region(/^The first rows/).getByText('Pip, 4 Mar 2019, 10').waitFor();
    await page.getByLabel('Dates are written').selectOption('day, month, year');
    await region(/^The first rows/).getByText('Pip, 3 Apr 2019, 10').waitFor();
    await page.getByLabel('Dates are written').selectOption('as found in it');
    await asked.waitFor();
    expect(await entries()).toBe(before);
  });

  test('is found again as it was left, and follows what is entered meanwhile', async () => {
    await page.getByLabel('Dates are written').selectOption('month, day, year');
    await outcome().getByText('2 readings of Pip will be taken in.').waitFor();
    await page.getByRole('link', { name: 'Back to Pip' }).click();
    await page.getByRole('heading', { name: 'Pip', level: 1 }).waitFor();
    await region('Work records').getByRole('link', { name: 'Take in a table' }).click();
    await outcome().getByText('2 readings of Pip will be taken in.').waitFor();
    await host('reading.record', { car: 'pip', value: 10_100, date: day('2019-03-04') });
    await outcome().getByText('1 reading of Pip will be taken in.').waitFor();
    await outcome().getByRole('link', { name: '2 rows are there already' }).waitFor();
    await button('Put it away').click();
    await button('Choose a file').waitFor();
  });

  test('of work asks which item is meant, and lets each text be taken for another', async () => {
    await choose('history.csv', HISTORY);
    const asked = page.getByRole('group', { name: '"Coolant change" may be one of 2 items of the car. Which one is it?' });
    await asked.getByRole('button', { name: 'Coolant', exact: true }).click();
    await outcome().getByText('4 readings and 4 records of Pip will be taken in.').waitFor();
    const work = region('Work, and what it is taken for');
    const takenFor = (text: string) => work.getByLabel(`${text}, Pip, is taken for`);
    await expect.poll(() => takenFor('Engine oil and fliter').inputValue()).toBe('oil');
    await work.getByText('written otherwise: look whether it is right').waitFor();
    await expect.poll(() => takenFor('Coolant change').inputValue()).toBe('coolant');
    await expect.poll(() => takenFor('Brake').inputValue()).toBe('');
    await work.getByText('perhaps Brake fluid').waitFor();
    await takenFor('Brake').selectOption('Brake fluid');
    const rows = region(/^The first rows/);
    await rows.getByRole('row', { name: /^4 .* Pip, 1 Jun 2022, 34.500 mi Brake fluid, replaced/ }).waitFor();
    await rows.getByRole('row', { name: /^2 .* Engine oil and filter, replaced .*“wash”, a line of its own .*£45\.00 ?Hill Garage/ }).waitFor();
    await page.getByLabel('Column 4, cost, holds').selectOption('nothing: left out');
    await expect.poll(() => rows.getByText('£45.00').count()).toBe(0);
    await page.getByLabel('Column 4, cost, holds').selectOption('what it cost');
    await rows.getByText('£45.00').waitFor();
    await soundAtEverySize(page, 'a table of work');
    await button('Take in 4 readings and 4 records').click();
    await said('Taken in: 4 readings and 4 records of Pip.');
    await page.getByRole('link', { name: 'Back to Pip' }).click();
    await region('Work records').getByText('Engine oil and fliter; wash').waitFor();
    await region('Service items').getByRole('row', { name: /^Brake fluid/ }).getByRole('cell', { name: '1 Jun 2022', exact: true }).waitFor();
  });

  test('upon which something stands says so in the list, and may be withdrawn once that is gone', async () => {
    const doubtful = (await readingsOfPip()).find(({ standing }) => standing === 'set-aside');
    const { undo } = await host('reading.settle', { reading: doubtful?.id ?? '', verdict: 'wrong' });
    await region('Work records').getByRole('link', { name: 'Take in a table' }).click();
    const before = region('Taken in before').getByRole('listitem').filter({ hasText: 'history.csv' });
    await before.getByText(`stands upon it (entry ${undo[0] ?? ''})`).waitFor();
    expect(await before.getByRole('button').count()).toBe(0);
    await host('entry.withdraw', { entries: [...undo] });
    await before.getByRole('button', { name: 'Withdraw history.csv' }).click();
    await button('Withdraw all of it').click();
    await said('history.csv is withdrawn');
    await region('Taken in before').getByText('No table was taken in yet.').waitFor();
    expect((await host('car.show', { car: 'pip' })).records).toEqual([]);
  });

  test.each([
    { case: 'an empty file', name: 'empty.csv', bytes: Buffer.alloc(0), says: 'The file is empty.' },
    { case: 'a spreadsheet', name: 'book.xlsx', bytes: Buffer.from('504b030414', 'hex'), says: 'The file is a spreadsheet or an archive' },
    { case: 'a quotation mark left open', name: 'quote.csv', bytes: Buffer.from('date,miles\n2025-02-01,"5\n'), says: 'In line 2 a quotation mark is opened' },
    { case: 'a head without rows', name: 'head.csv', bytes: Buffer.from('date,miles\n'), says: 'The table has a head and no rows under it.' },
    { case: 'more than 20 megabytes', name: 'huge.csv', bytes: Buffer.alloc(20_000_001, 'x'), says: 'The file is larger than 20 megabytes.' },
  ])('that is $case is refused in a sentence', async ({ name, bytes, says }) => {
    await choose(name, bytes);
    await page.getByRole('alert').filter({ hasText: says }).waitFor();
    expect(await page.getByRole('button', { name: /^Take in/ }).count()).toBe(0);
  });

  test('that a wrong choice makes unreadable is read again by another', async () => {
    await choose('plain.csv', '2023-03-01,40500\n');
    await outcome().getByText('1 reading of Pip will be taken in.').waitFor();
    await page.getByLabel('The first row is').selectOption('a head');
    await page.getByRole('alert').filter({ hasText: 'The table has a head and no rows under it.' }).waitFor();
    await soundAtEverySize(page, 'a table that cannot be read');
    await page.getByLabel('The first row is').selectOption('as found in it');
    await outcome().getByText('1 reading of Pip will be taken in.').waitFor();
  });

  test('of 2 000 rows in 12 columns is shown in pages, and taken in whole', async () => {
    await choose('long.csv', longTable());
    await outcome().getByText('1950 readings of Pip will be taken in.').waitFor();
    const refused = region('Rows that cannot be taken in').locator('li').filter({ hasText: /^Line/ });
    await expect.poll(() => refused.count()).toBe(25);
    await region('Rows that cannot be taken in').getByRole('button', { name: 'Rows after' }).click();
    await region('Rows that cannot be taken in').getByText('26 to 50 of 50').waitFor();
    // By hand: the fiftieth is row 1 967 of the table, counted from 0, and the head is line 1.
    await refused.last().getByText('Line 1969').waitFor();
    await expect.poll(() => region(/^The first rows/).getByRole('row').count()).toBe(7);
    await button('Show the first 20').click();
    await expect.poll(() => region(/^The first rows/).getByRole('row').count()).toBe(21);
    await expect.poll(() => region('What each column holds').getByRole('row').count()).toBe(13);
    await soundAtEverySize(page, 'a long table');
    await button('Take in 1950 readings').click();
    await said('Taken in: 1950 readings of Pip.');
    await region('Taken in before').getByText('1950 readings on 25 Nov 2026').waitFor();
  });

  test('taken in once, the very same file read the other way round comes beside it only when that is said', async () => {
    const file = 'date,odometer\n05/06/2018,3100\n';
    await choose('same.csv', file);
    await page.getByLabel('Dates are written').selectOption('day, month, year');
    await outcome().getByRole('button', { name: 'Take in 1 reading' }).click();
    await said('Taken in: 1 reading of Pip.');
    const before = await entries();
    await choose('same.csv', file);
    await page.getByLabel('Dates are written').selectOption('month, day, year');
    await outcome().getByRole('button', { name: 'Take in 1 reading' }).click();
    await outcome().getByRole('alert').filter({ hasText: 'This very file was taken in on 25 Nov 2026 and stands.' }).waitFor();
    expect(await entries()).toBe(before);
    await outcome().getByRole('button', { name: 'Take it in beside the other one' }).click();
    await expect.poll(entries).toBeGreaterThan(before);
  });

  test('nothing complained', () => expect(served.complaints).toEqual([]));
});
