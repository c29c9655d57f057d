import { describe, expect, test } from 'vitest';
import { day } from '../../calendar/day.ts';
import { decide, preview, refusalOf, withPip } from './take-in.ts';

const KNOWN = [['2024-01-10', 9000], ['2025-01-10', 18_000]] as const;

describe('a table of readings', () => {
  test.each([
    { case: 'a known head, and the unit in it', text: 'Date,Odometer (km)\n2026-01-05,41500\n', reads: { value: 41_500, unit: 'km' }, source: 'the head says km' },
    { case: 'a head that is a unit', text: 'day;miles\n2026-01-05;41500\n', reads: { value: 41_500, unit: 'mi' }, source: 'the head says miles' },
    { case: 'no unit: the car\'s own', text: 'date,mileage\n2026-01-05,41500\n', reads: { value: 41_500, unit: 'mi' }, source: 'Pip shows miles' },
    { case: 'a unit in the value', text: 'date,odometer\n2026-01-05,41 500 km\n', reads: { value: 41_500, unit: 'km' }, source: 'the row says km' },
    { case: 'a column of units', text: 'date,reading,unit\n2026-01-05,41500,KM\n', reads: { value: 41_500, unit: 'km' }, source: 'the row says km' },
    { case: 'the unit as chosen, where none is named', text: 'date,reading\n2026-01-05,41500\n', said: { unit: 'km' as const }, reads: { value: 41_500, unit: 'km' }, source: 'said' },
    { case: 'the row\'s unit before the one chosen', text: 'date,reading\n2026-01-05,41500 mi\n', said: { unit: 'km' as const }, reads: { value: 41_500, unit: 'mi' }, source: 'chosen for rows that name none' },
    { case: 'no head', text: '2026-01-05,41500\n', reads: { value: 41_500, unit: 'mi' }, source: 'one column of dates, one of numbers' },
    { case: 'a head in another language, columns chosen', text: 'Datum,Stand\n2026-01-05,41500\n', said: { columns: { reading: 2 } }, reads: { value: 41_500, unit: 'mi' }, source: 'dates are known by their look' },
    { case: 'columns chosen against the head', text: 'date,km,true km\n2026-01-05,1,41500\n', said: { columns: { reading: 3 } }, reads: { value: 41_500, unit: 'mi' }, source: 'the head of the column chosen is not known' },
    { case: 'decimals', text: 'date,miles\n2026-01-05,"41500,5"\n', reads: { value: 41_500.5, unit: 'mi' }, source: 'one digit after the comma' },
    { case: 'thousands, as the table shows elsewhere', text: 'date,miles\n2026-01-05,"41,500"\n2026-02-05,"41,700.5"\n', reads: { value: 41_500, unit: 'mi' }, source: 'the point stands last in another row' },
    { case: 'thousands, as said', text: 'date,miles\n2026-01-05,"41,500"\n', said: { decimalMark: '.' as const }, reads: { value: 41_500, unit: 'mi' }, source: 'said' },
    { case: 'a car by its registration', text: 'car,date,miles\nab12cde,2026-01-05,41500\n', reads: { value: 41_500, unit: 'mi' }, source: 'Pip\'s is AB12 CDE' },
    { case: 'the program\'s own table', text: '"date","shown","unit","source","standing"\r\n"2026-01-05","41500","mi","read by the keeper","accepted"\r\n', reads: { value: 41_500, unit: 'mi' }, source: 'readings.csv of a history pack' },
  ])('is read with $case', ({ text, said, reads }) => {
    const view = preview(withPip(), text, said);
    expect(view).toMatchObject({ kind: 'readings', ready: true, questions: [] });
    expect(view.first[0]).toMatchObject({ state: 'stored', car: 'pip', date: '2026-01-05', reading: reads, code: null });
  });

  test.each([
    { case: 'no date', row: ',41500', code: 'import-date-missing' },
    { case: 'an impossible date', row: '2026-02-30,41500', code: 'import-not-a-date' },
    { case: 'a date to come', row: '2026-11-26,41500', code: 'date-in-future' },
    { case: 'a date before the car', row: '2009-12-31,41500', code: 'before-registration' },
    { case: 'no reading', row: '2026-01-05,', code: 'import-row-empty' },
    { case: 'words for a reading', row: '2026-01-05,about 40000', code: 'not-a-distance' },
    { case: 'a negative reading', row: '2026-01-05,-5', code: 'not-a-distance' },
    { case: 'less than nothing, however little', row: '2026-01-05,-0', code: 'not-a-distance' },
    { case: 'an absurd reading', row: '2026-01-05,99999999999', code: 'not-a-distance' },
    { case: 'an unknown unit', row: '2026-01-05,41500,furlong', code: 'import-unknown-unit' },
    { case: 'an unknown car', row: '2026-01-05,41500,,Nobody', code: 'unknown-car' },
    { case: 'a formula for a reading', row: '2026-01-05,=1+1', code: 'import-formula' },
    { case: 'a formula for a date', row: '=TODAY(),41500', code: 'import-formula' },
    { case: 'a formula with @ in the note', row: '2026-01-05,41500,,,@SUM(A1)', code: 'import-formula' },
    { case: 'a formula with + in the note', row: "2026-01-05,41500,,,+cmd|' /C x'!A0", code: 'import-formula' },
    { case: 'a formula with - in the note', row: '2026-01-05,41500,,,-SUM(A1)', code: 'import-formula' },
    { case: 'a formula after a tab', row: '2026-01-05,41500,,,"\t=1"', code: 'import-formula' },
    { case: 'a control character', row: '2026-01-05,41500,,,a\u0007b', code: 'control-characters' },
    { case: 'a character that turns the writing round', row: '2026-01-05,41500,,,a\u202eb', code: 'control-characters' },
    { case: 'half a character', row: '2026-01-05,41500,,,a\ud800b', code: 'control-characters' },
    { case: 'a note of 501 characters', row: `2026-01-05,41500,,,${'x'.repeat(501)}`, code: 'text-too-long' },
    { case: 'a cell of 5001 characters', row: `2026-01-05,41500,,,${'x'.repeat(5001)}`, code: 'import-cell-long' },
    { case: 'more cells than heads', row: '2026-01-05,41500,,,a note, with a comma', code: 'import-too-many-cells' },
  ])('names a row with $case by its line, and takes the others', ({ row, code }) => {
    const view = preview(withPip(), `date,reading,unit,car,note\n2024-05-01,9000\n${row}\n2024-06-01,9500\n`);
    expect(view).toMatchObject({ ready: true, questions: [], counts: { rows: 3, stored: 2, refused: 1 }, rows: [{ line: 3, state: 'refused', code }] });
    expect(view.rows[0]?.text).toMatch(/[.?!]$/);
  });

  test('takes a text that another program guarded, and a number with its sign', () => {
    const view = preview(withPip(), 'date,reading,note\n2026-01-05,+41500,"\'=new pads"\n2026-01-06,41510,- by eye\n');
    expect(view.first).toMatchObject([{ state: 'stored', reading: { value: 41_500 }, note: '=new pads', cleaned: [{ code: 'import-guarded' }] }, { state: 'stored', note: '- by eye', cleaned: [] }]);
  });

  test('judges readings as if entered by hand, and names the doubtful', () => {
    const view = preview(withPip(KNOWN), 'date,reading\n2024-06-01,180000\n2025-06-01,1900\n2025-07-01,22000\n');
    expect(view.counts).toMatchObject({ stored: 1, setAside: 2, readings: 3 });
    expect(view.rows).toMatchObject([{ line: 2, state: 'set-aside', code: 'doubt-too-high' }, { line: 3, state: 'set-aside', code: 'doubt-decrease' }]);
  });

  test('a slip in the first row is doubted, and not the rows after it', () => {
    const rows = Array.from({ length: 12 }, (_, month) => `2025-${String(month + 1).padStart(2, '0')}-01,${12_000 + 900 * month}`);
    const view = preview(withPip(), `date,reading\n2024-12-01,91000\n${rows.join('\n')}\n`);
    expect(view.counts).toMatchObject({ stored: 12, setAside: 1 });
    expect(view.rows).toMatchObject([{ line: 2, code: 'doubt-above-later' }]);
  });

  test('skips what stands already, and what an earlier row says', () => {
    const view = preview(withPip(KNOWN), 'date,reading\n2024-01-10,9000\n2025-06-01,22000\n2025-06-01,22000\n2025-01-10,18000.4\n2025-01-10,18001\n');
    expect(view.rows).toMatchObject([
      { line: 2, state: 'duplicate', code: 'import-known' },
      { line: 4, state: 'duplicate', code: 'import-twice', text: expect.stringContaining('3') as string },
      { line: 5, state: 'duplicate', code: 'import-known' },
    ]);
    expect(view.counts).toMatchObject({ duplicates: 3, readings: 2 });
  });
});

describe('a table that leaves something open', () => {
  test('of the order of dates waits for it, and takes the answer', () => {
    const text = 'date,reading\n3/4/2025,19500\n5/6/2025,21000\n';
    const open = preview(withPip(KNOWN), text);
    expect(open).toMatchObject({ ready: false, counts: { waiting: 2, stored: 0 }, questions: [{ answer: 'dateOrder', code: 'import-ask-order' }] });
    expect(preview(withPip(KNOWN), text, { dateOrder: 'mdy' })).toMatchObject({ ready: true, questions: [], first: [{ date: '2025-03-04' }, { date: '2025-05-06' }] });
  });

  test('of the order names the rows in another once it is said', () => {
    const view = preview(withPip(KNOWN), 'date,reading\n25/3/2025,19500\n3/25/2025,19500\n4/5/2025,20000\n', { dateOrder: 'dmy' });
    expect(view).toMatchObject({ ready: true, rows: [{ line: 3, code: 'import-other-order' }], first: [{ date: '2025-03-25' }, {}, { date: '2025-05-04' }] });
  });

  test.each([
    { case: 'thousands or decimals', text: 'date,miles\n2026-01-05,"41,500"\n', answer: 'decimalMark', suggested: '.' },
    { case: 'decimals in one column and perhaps thousands in another', text: 'date,miles,work,cost\n2026-01-05,41.500,wash,12.50\n', answer: 'decimalMark', suggested: ',' },
    { case: 'numbers that speak for both marks', text: 'date,miles\n2026-01-05,"41,500"\n2026-01-06,"41.501,5"\n2026-01-07,"41,502.5"\n', answer: 'decimalMark', suggested: '.' },
    { case: 'units named in some rows only', text: 'date,reading\n2026-01-05,41500 km\n2026-01-06,41600\n', answer: 'unit', suggested: 'km' },
    { case: 'readings that go with the other unit', text: 'date,reading\n2024-05-01,18900\n2024-09-01,24000\n2024-12-31,28600\n', answer: 'unit', suggested: 'km' },
    { case: 'no column of dates', text: 'reading,note\n41500,a\n', answer: 'columns', suggested: null },
    { case: 'two columns of numbers and no head', text: '2026-01-05,41500,12.50\n', answer: 'columns', suggested: null },
    { case: 'one column of numbers under a head that is not known', text: 'Datum,Preis\n2026-01-05,12.50\n', answer: 'columns', suggested: 'reading=2' },
    { case: 'heads that are not known', text: 'Datum,Stand,Preis\n2026-01-05,41500,12.50\n', answer: 'columns', suggested: null },
  ])('of $case asks', ({ text, answer, suggested }) => {
    const view = preview(withPip(KNOWN), text);
    expect(view).toMatchObject({ ready: false, questions: [{ answer, suggested }] });
    expect(view.questions[0]?.options.length).toBeGreaterThan(0);
    expect(view.questions[0]?.text).toMatch(/\?/);
  });

  test('units named in some rows that are the car\'s own are not asked about', () => {
    expect(preview(withPip(), 'date,reading\n2026-01-05,41500 mi\n2026-01-06,41600\n')).toMatchObject({ ready: true, questions: [] });
  });

  test('of the car asks where there are several, and takes rows that name one', () => {
    const household = withPip();
    household.must('car.add', { id: 'wren', name: 'Wren' });
    const view = preview(household, 'date,reading,car\n2026-01-05,41500,\n2026-01-06,7000,wren\n');
    expect(view).toMatchObject({ counts: { waiting: 1, stored: 1 }, questions: [{ answer: 'car', options: [{ value: 'pip' }, { value: 'wren' }], lines: [2] }] });
    expect(preview(household, 'date,reading,car\n2026-01-05,41500,\n', { car: 'Pip' })).toMatchObject({ ready: true, first: [{ car: 'pip' }] });
  });
});

describe('a table of work', () => {
  const text = [
    'Date;Odometer;Description;Garage;Cost (GBP);Done by;Notes',
    '5 Jan 2025;18,000;Brake fliud, wash;Hill Road;£1,149.50;Hill Road;all well',
    '1 Mar 2026;"29,000 mi";Engine oil & filter changed;home;12.50;me;',
    '2 Mar 2026;;checked brake fluid;;;;',
  ].join('\n');

  test('makes records with items, places, costs and readings', () => {
    const decided = decide(withPip(KNOWN), text);
    if (!decided.ok) throw new Error(decided.refusal.code);
    expect(preview(withPip(KNOWN), text)).toMatchObject({ kind: 'history', ready: true, counts: { stored: 3, records: 3, readings: 2 } });
    const records = decided.value.entries.filter(({ kind }) => kind === 'work-recorded').map(({ values }) => values);
    expect(records).toMatchObject([
      { date: '2025-01-05', title: 'Brake fliud, wash', place: 'garage', placeName: 'Hill Road', doneBy: 'Hill Road', printedTotalMinor: 114_950, note: 'all well', reconstructed: true, lines: [{ item: 'fluid', name: 'Brake fluid', work: 'replace', outcome: 'done' }, { item: null, name: 'wash' }] },
      { date: '2026-03-01', place: 'home', placeName: null, printedTotalMinor: 1250, lines: [{ item: 'oil', name: 'Engine oil and filter' }] },
      { date: '2026-03-02', reading: null, printedTotalMinor: null, lines: [{ item: 'fluid', work: 'check' }] },
    ]);
    const read = decided.value.entries.filter(({ kind }) => kind === 'reading-recorded').map(({ values }) => values);
    expect(read).toMatchObject([{ date: '2025-01-05', typed: { value: 18_000, unit: 'mi' }, source: 'record' }, { date: '2026-03-01', typed: { value: 29_000, unit: 'mi' } }]);
    expect(records.map(({ reading }) => reading)).toEqual([read[0]?.['id'], read[1]?.['id'], null]);
  });

  test('says for what each text is taken, and what else may be meant', () => {
    expect(preview(withPip(KNOWN), 'date,work\n2026-01-05,Brake fliud\n2026-02-05,oil\n2026-03-05,oil\n2026-04-05,wash\n').items).toEqual([
      { text: 'Brake fliud', car: 'pip', item: 'fluid', name: 'Brake fluid', how: 'spelling', rows: 1, near: [] },
      { text: 'oil', car: 'pip', item: null, name: 'oil', how: 'none', rows: 2, near: [{ id: 'oil', name: 'Engine oil and filter' }] },
      { text: 'wash', car: 'pip', item: null, name: 'wash', how: 'none', rows: 1, near: [] },
    ]);
  });

  test('takes the item that the person names for a text, or none', () => {
    const said = { items: [{ text: 'OIL', item: 'oil' }, { text: 'Brake fluid', item: null }] };
    expect(preview(withPip(), 'date,work\n2026-01-05,oil\n2026-02-05,brake fluid\n', said).first).toMatchObject([{ lines: [{ item: 'oil' }] }, { lines: [{ item: null, name: 'brake fluid' }] }]);
  });

  test('asks where items are named alike', () => {
    const household = withPip();
    household.must('item.add', { id: 'fluid-2', car: 'pip', name: 'Fluid, brake', history: 'unknown', interval: { repeat: { months: 24, distance: null } } });
    const view = preview(household, 'date,work\n2026-01-05,brake fluid change\n2026-01-06,wash\n');
    expect(view).toMatchObject({ ready: false, counts: { waiting: 1, stored: 1 }, questions: [{ answer: 'items', subject: 'brake fluid change', options: [{ value: 'fluid' }, { value: 'fluid-2' }, { value: '' }] }] });
    expect(preview(household, 'date,work\n2026-01-05,brake fluid change\n', { items: [{ text: 'brake fluid change', item: 'fluid-2' }] })).toMatchObject({ ready: true, first: [{ lines: [{ item: 'fluid-2' }] }] });
  });

  test('cuts a text that is too long for a name, keeps it whole in the note, and says so', () => {
    const long = `${'long words '.repeat(20)}end`;
    const decided = decide(withPip(), `date,work,note\n2026-01-05,${long},my note\n`);
    const record = decided.ok ? decided.value.entries[0]?.values : undefined;
    expect(record).toMatchObject({ note: `${long}\nmy note`, title: expect.stringMatching(/ …$/) as string });
    expect((record as { title: string }).title.length).toBeLessThanOrEqual(120);
    expect(preview(withPip(), `date,work,note\n2026-01-05,${long},my note\n`).first).toMatchObject([{ cleaned: [{ code: 'import-cut' }] }]);
  });

  test('points to a reading that stands already, and writes it once for several rows of a day', () => {
    const decided = decide(withPip(KNOWN), 'date,reading,work\n2025-01-10,18000,wash\n2025-02-10,19000,wash\n2025-02-10,19000,wax\n');
    if (!decided.ok) throw new Error(decided.refusal.code);
    const readings = decided.value.entries.filter(({ kind }) => kind === 'reading-recorded');
    const records = decided.value.entries.filter(({ kind }) => kind === 'work-recorded').map(({ values }) => (values as { reading: string }).reading);
    expect(readings).toHaveLength(1);
    expect(records).toEqual(['new-2', readings[0]?.values['id'], readings[0]?.values['id']]);
  });

  test('skips work that stands already', () => {
    const household = withPip();
    household.must('record.add', { car: 'pip', date: day('2026-01-05'), title: 'Brake fluid', lines: [{ item: 'fluid' }], printedTotalMinor: 1250 });
    const view = preview(household, 'date,work,cost\n2026-01-05,brake fluid change,12.50\n2026-01-05,brake fluid,\n2026-01-05,brake fluid,99.00\n2026-01-06,brake fluid,12.50\n');
    expect(view.rows.map(({ line, code }) => [line, code])).toEqual([[2, 'import-known'], [3, 'import-known']]);
    expect(view.counts).toMatchObject({ stored: 2, duplicates: 2 });
  });

  test.each([
    { case: 'another currency', row: '2026-01-05,wash,12 EUR', code: 'import-currency' },
    { case: 'no amount', row: '2026-01-05,wash,cheap', code: 'import-amount' },
    { case: 'a place longer than a name', row: `2026-01-05,wash,12.00,${'x'.repeat(81)}`, code: 'text-too-long' },
    { case: 'neither work nor reading', row: '2026-01-05,,12.00', code: 'import-row-empty' },
    { case: 'an outcome that is none', row: '2026-01-05,wash,12.00,,perhaps', code: 'import-outcome' },
  ])('names a row with $case', ({ row, code }) => {
    expect(preview(withPip(), `date,work,cost,garage,outcome\n${row}\n2026-02-05,wax,3.50\n`)).toMatchObject({ counts: { stored: 1 }, rows: [{ line: 2, code }] });
  });

  test('takes what was left undone as undone, and what was found good as looked at', () => {
    // Source: records.csv of a history pack; its column of work says replace or check, its lines stand under line.
    const text = '"date","title","line","work","outcome","odometer"\r\n"2025-01-05","Service","Brake fluid","replace","not-done","18\u202f000 mi"\r\n"2025-01-05","Service","Engine oil and filter","check","good","18\u202f000 mi"\r\n';
    const decided = decide(withPip(), text);
    const records = (decided.ok ? decided.value.entries : []).filter(({ kind }) => kind === 'work-recorded').map(({ values }) => values);
    expect(records).toMatchObject([{ lines: [{ item: 'fluid', outcome: 'not-done' }] }, { lines: [{ item: 'oil', outcome: 'good', work: 'check' }] }]);
  });

  test('notes nothing to be looked at again for what was watched long ago', () => {
    const decided = decide(withPip(), 'date,work,outcome\n2023-01-05,Brake fluid,watch\n');
    expect(decided.ok && decided.value.entries.map(({ kind }) => kind)).toEqual(['work-recorded']);
  });

  test('reads the head\'s currency', () => {
    expect(preview(withPip(), 'date,work,Cost EUR\n2026-01-05,wash,12.00\n').rows).toMatchObject([{ code: 'import-currency' }]);
  });
});

describe('a file', () => {
  test.each([
    { case: 'that is empty', text: '', code: 'import-empty' },
    { case: 'of blanks', text: ' \n\n', code: 'import-empty' },
    { case: 'of a head only', text: 'date,km\n', code: 'import-only-head' },
    { case: 'of dates only', text: 'date\n2026-01-05\n', code: 'import-no-values' },
    { case: 'with a NUL', text: 'date,km\n2026-01-05,\0\n', code: 'import-nul' },
    { case: 'with an open quote', text: 'date,km\n"2026-01-05,1\n', code: 'import-quotes' },
    { case: 'of 20 001 rows', text: `date,km\n${'2026-01-05,1\n'.repeat(20_001)}`, code: 'import-too-long' },
    { case: 'of 201 columns', text: `date,km${',x'.repeat(199)}\n2026-01-05,1\n`, code: 'import-too-wide' },
    { case: 'without a column chosen', text: 'date,km\n2026-01-05,1\n', said: { columns: { reading: 3 } }, code: 'import-no-column' },
    { case: 'with one column chosen for two', text: 'date,km\n2026-01-05,1\n', said: { columns: { reading: 2, cost: 2 } }, code: 'import-column-twice' },
    { case: 'for a car that is not there', text: 'date,km\n2026-01-05,1\n', said: { car: 'nobody' }, code: 'unknown-car' },
  ])('$case is refused', ({ text, said, code }) => {
    expect(refusalOf(withPip(), text, said)).toBe(code);
  });

  test('of 20 000 rows is taken, all of them bad ones too', () => {
    expect(preview(withPip(), `date,km\n${'2026-13-05,1\n'.repeat(20_000)}`)).toMatchObject({ ready: false, counts: { rows: 20_000, refused: 20_000 } });
  });

  test('shows its columns, and what was left out', () => {
    expect(preview(withPip(), 'Date,Colour,Odometer,Notes\n2026-01-05,red,41500,\n', { columns: { note: null } }).columns).toEqual([
      { number: 1, head: 'Date', holds: 'date', by: 'header', examples: ['2026-01-05'] },
      { number: 2, head: 'Colour', holds: null, by: 'none', examples: ['red'] },
      { number: 3, head: 'Odometer', holds: 'reading', by: 'header', examples: ['41500'] },
      { number: 4, head: 'Notes', holds: null, by: 'none', examples: [] },
    ]);
  });
});
