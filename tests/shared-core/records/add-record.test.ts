import { describe, expect, test } from 'vitest';
import { paperKept } from '../../../shared-core/records/paper.ts';
import { readings } from '../../../shared-core/fleet/reading.ts';
import { workRecords } from '../../../shared-core/records/work-record.ts';
import { newEntry } from '../../../shared-core/journal/entry-kind.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import { addRecord } from '../../../shared-core/records/add-record.ts';
import { parseRequest } from '../../../shared-core/result/parse-request.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** Two cars with an item each; Pip was read at 48 000 and 58 000 km. */
function household(): MemoryHousehold {
  const all = memoryHousehold();
  all.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-03-01') });
  all.must('car.add', { id: 'wren', name: 'Wren' });
  all.must('reading.record', { car: 'pip', value: 48_000, date: day('2025-01-10') });
  all.must('reading.record', { car: 'pip', value: 58_000, date: day('2026-01-10') });
  all.must('item.add', { id: 'oil', car: 'pip', name: 'Engine oil and filter', interval: { repeat: { months: 12, distance: null } } });
  all.must('item.add', { id: 'belt', car: 'wren', name: 'Belt', work: 'check', interval: { repeat: { months: 12, distance: null } } });
  return all;
}

describe('recording work', () => {
  test('a line on an item takes its name and kind; what is not said is said to be unknown', () => {
    const { record, reading } = household().must('record.add', { car: 'Pip', lines: [{ item: 'oil' }, { name: 'Wipers', work: 'check', outcome: 'watch', minutes: 5, note: 'streaks' }] });
    expect(reading).toBeNull();
    expect(record).toEqual({
      id: 'new-3', car: 'pip', date: '2026-11-25', title: 'Engine oil and filter, Wipers', place: 'home', placeName: null, doneBy: null, approvedBy: null, reference: null, method: null, reading: null,
      lines: [
        { item: 'oil', name: 'Engine oil and filter', work: 'replace', outcome: 'done', minutes: null, note: '' },
        { item: null, name: 'Wipers', work: 'check', outcome: 'watch', minutes: 5, note: 'streaks' },
      ],
      costs: [], printedTotalMinor: null, lotsUsed: [], papers: [], note: '', reconstructed: false,
    });
  });

  test('an item of things to be checked makes a line of checking', () => {
    expect(household().must('record.add', { car: 'wren', lines: [{ item: 'belt' }] }).record.lines[0]?.work).toBe('check');
  });

  test('a reading with it is judged like any other and stands beside it', () => {
    const all = household();
    const { record, reading } = all.must('record.add', { car: 'pip', date: day('2026-06-01'), reading: { value: 62_000, unit: 'km' }, lines: [{ item: 'oil' }] });
    expect(reading).toMatchObject({ state: 'accepted', reading: { id: record.reading, date: '2026-06-01', source: 'record' } });
    const odd = all.must('record.add', { car: 'pip', date: day('2026-06-02'), reading: { value: 6200, unit: 'km' }, lines: [{ item: 'oil' }] });
    expect(odd.reading).toMatchObject({ state: 'set-aside', code: 'decrease' });
    expect(all.facts().get(workRecords, odd.record.id)?.reading).toBe(odd.reading?.reading.id);
    expect(all.facts().get(readings, odd.record.reading ?? '')?.standing).toBe('set-aside');
  });

  test('money is kept as printed, never mended', () => {
    const { record } = household().must('record.add', { car: 'pip', lines: [{ item: 'oil' }], costs: [{ kind: 'parts', text: 'Oil', amountMinor: 3499 }, { kind: 'discount', text: 'Card', amountMinor: -350 }], printedTotalMinor: 3150 });
    expect([record.costs.map((line) => line.amountMinor), record.printedTotalMinor]).toEqual([[3499, -350], 3150]);
  });

  test('a title is made of the lines and cut between characters', () => {
    // What is written, for the reply is trimmed once more.
    const title = (...names: readonly string[]) => {
      const all = household();
      all.must('record.add', { car: 'pip', lines: names.map((name) => ({ name })) });
      return all.entries.at(-1)?.values['title'];
    };
    // By hand: 10 + 2 + 107 = 119 places before the wrench, whose second half would be the 121st.
    expect(title('x'.repeat(10), `${'y'.repeat(107)}🔧`)).toBe(`${'x'.repeat(10)}, ${'y'.repeat(107)}`);
    expect(title('x'.repeat(10), `${'y'.repeat(106)}🔧`)).toBe(`${'x'.repeat(10)}, ${'y'.repeat(106)}🔧`);
    // 118 + ", " is 120 places, the last of them blank.
    expect(title('x'.repeat(118), 'y')).toBe(`${'x'.repeat(118)},`);
  });

  test.each([
    { case: 'an unknown car', request: { car: 'nobody' }, code: 'unknown-car' },
    { case: 'no line', request: { lines: [] }, code: 'not-understood' },
    { case: 'a line of no name', request: { lines: [{}] }, code: 'line-without-name' },
    { case: 'an unknown item', request: { lines: [{ item: 'none' }] }, code: 'unknown-item' },
    { case: 'an item of another car', request: { lines: [{ item: 'belt' }] }, code: 'unknown-item' },
    { case: 'tomorrow', request: { date: '2026-11-26' }, code: 'date-in-future' },
    { case: 'tomorrow, with a reading', request: { date: '2026-11-26', reading: { value: 60_000, unit: 'km' } }, code: 'date-in-future' },
    { case: 'before its first registration', request: { date: '2020-02-29' }, code: 'before-registration' },
    { case: 'an unknown paper', request: { papers: ['0'.repeat(64)] }, code: 'unknown-paper' },
    { case: 'a paper that is no digest', request: { papers: ['receipt.pdf'] }, code: 'not-a-digest' },
    { case: 'parts of a penny', request: { costs: [{ kind: 'parts', text: 'Oil', amountMinor: 34.99 }] }, code: 'not-an-amount' },
    { case: 'a reading below 0', request: { reading: { value: -1, unit: 'km' } }, code: 'not-a-distance' },
    { case: 'a line end in the title', request: { title: 'Oil\nfilter' }, code: 'control-characters' },
    { case: 'a long note', request: { note: 'x'.repeat(4001) }, code: 'text-too-long' },
  ])('$case is refused whole: $code', ({ request, code }) => {
    const all = household();
    const before = all.entries.length;
    expect(all.call('record.add', { car: 'pip', lines: [{ item: 'oil' }], ...request } as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(all.entries).toHaveLength(before);
  });

  test('an id is taken once', () => {
    const all = household();
    all.must('record.add', { id: 'w', car: 'pip', lines: [{ item: 'oil' }] });
    expect(all.call('record.add', { id: 'w', car: 'wren', lines: [{ item: 'belt' }] })).toMatchObject({ ok: false, refusal: { code: 'id-taken' } });
  });

  test('every fact the entries stand upon is named, papers too', () => {
    const all = household();
    const paper = { id: 'a'.repeat(64), name: 'receipt.pdf', media: 'application/pdf' as const, bytes: 10 };
    const facts = memoryFacts(entryKinds, [...all.entries, { ...newEntry(paperKept, paper), seq: 99, at: '2026-11-25T12:00:00.000Z' }]);
    const request = parseRequest(addRecord.request, { car: 'pip', reading: { value: 60_000, unit: 'km' }, lines: [{ item: 'oil' }], papers: [paper.id] });
    const decided = request.ok ? addRecord.decide(facts, request.value, { today: day('2026-11-25'), now: '2026-11-25T12:00:00.000Z', newId: () => 'new' }) : request;
    const references = decided.ok ? decided.value.entries.map((entry) => entryKinds.get(entry.kind)?.refersTo(entry.values)) : [];
    expect(references).toEqual([
      [{ family: 'car', id: 'pip' }, { family: 'paper', id: paper.id }],
      [{ family: 'car', id: 'pip' }, { family: 'reading', id: 'new' }, { family: 'service-item', id: 'oil' }, { family: 'paper', id: paper.id }],
    ]);
  });
});

describe('one item twice in a record', () => {
  const line = { item: 'oil', name: 'Engine oil', minutes: null, note: '' } as const;
  const twice = (...lines: readonly [Partial<RequestOf<'record.add'>['lines'][number]>, Partial<RequestOf<'record.add'>['lines'][number]>]) => lines.map((one) => ({ ...line, ...one }));

  test.each([
    { case: 'done and not done', lines: twice({ outcome: 'done' }, { outcome: 'not-done' }) },
    { case: 'good and to be watched', lines: twice({ work: 'check', outcome: 'good' }, { work: 'check', outcome: 'watch' }) },
    { case: 'replaced, and looked at by nobody', lines: twice({ work: 'replace', outcome: 'done' }, { work: 'check', outcome: 'not-done' }) },
  ])('with contrary outcomes is refused: $case', ({ lines }) => {
    const all = household();
    const before = all.entries.length;
    const refused = { ok: false, refusal: { code: 'item-twice-contrary', values: { item: 'Engine oil' }, path: ['lines', 1, 'outcome'] } };
    expect(all.call('record.add', { car: 'pip', lines })).toMatchObject(refused);
    expect(all.entries).toHaveLength(before);
    all.must('record.add', { id: 'w', car: 'pip', lines: [{ item: 'oil' }] });
    expect(all.call('record.amend', { id: 'w', why: 'slip', lines: lines.map((one) => ({ ...line, work: 'replace' as const, outcome: 'done' as const, ...one })) } as never)).toMatchObject(refused);
  });

  test.each([
    { case: 'looked at and then replaced', lines: twice({ work: 'check', outcome: 'acted' }, { work: 'replace', outcome: 'done' }) },
    { case: 'both done: the left and the right', lines: twice({ note: 'left' }, { note: 'right' }) },
  ])('is taken where the two go together: $case', ({ lines }) => {
    expect(household().call('record.add', { car: 'pip', lines }).ok).toBe(true);
  });
});

describe('amending a record', () => {
  const added = () => {
    const all = household();
    all.must('record.add', { id: 'w', car: 'pip', date: day('2026-06-01'), reading: { value: 62_000, unit: 'km' }, lines: [{ item: 'oil' }], printedTotalMinor: 3499 });
    return all;
  };

  test('changes only the fields given and keeps the original in the journal', () => {
    const all = added();
    const before = all.facts().get(workRecords, 'w');
    expect(all.must('record.amend', { id: 'w', printedTotalMinor: 3490, why: 'misread' }).record).toEqual({ ...before, printedTotalMinor: 3490 });
    expect(all.entries.filter((entry) => entry.kind === 'work-recorded' || entry.kind === 'work-amended').map((entry) => entry.values['printedTotalMinor'])).toEqual([3499, 3490]);
    const [shown] = all.must('car.show', { car: 'pip' }).records;
    expect([shown?.amended, shown?.totalMinor]).toEqual([true, 3490]);
  });

  test('is refused where nothing would change, and nothing is written', () => {
    const all = added();
    const before = all.entries.length;
    expect(all.call('record.amend', { id: 'w', printedTotalMinor: 3499, why: 'once more' })).toMatchObject({ refusal: { code: 'nothing-amended' } });
    expect(all.entries).toHaveLength(before);
  });

  test('a car that has left has no records of later days, and leaves before what is known of it only where one is sure', () => {
    const all = added();
    const leave = (sure?: boolean) => all.call('car.leave', { car: 'pip', how: 'sold', on: day('2026-05-01'), ...(sure === undefined ? {} : { sure }) });
    expect(leave()).toMatchObject({ refusal: { code: 'left-before-known', path: ['sure'], values: { last: '2026-06-01' } } });
    expect(leave(true)).toMatchObject({ ok: true });
    const add = (date: string) => all.call('record.add', { car: 'pip', date: day(date), lines: [{ name: 'Wipers' }] });
    expect(add('2026-05-02')).toMatchObject({ refusal: { code: 'after-car-left', values: { on: '2026-05-01' } } });
    expect(add('2026-05-01')).toMatchObject({ ok: true });
  });

  test('an amended date moves the next one on', () => {
    const all = added();
    const likely = () => all.must('due.show', {}).cars[0]?.windows.find((window) => window.item === 'oil')?.likely;
    expect(likely()).toBe('2027-06-01');
    all.must('record.amend', { id: 'w', date: day('2026-05-01'), why: 'wrong month' });
    expect(likely()).toBe('2027-05-01');
  });

  test.each([
    { case: 'an unknown record', request: { id: 'none' }, code: 'unknown-record' },
    { case: 'no reason', request: { why: ' ' }, code: 'text-empty' },
    { case: 'another car', request: { car: 'wren' }, code: 'unknown-field' },
    { case: 'another reading', request: { reading: 'x' }, code: 'unknown-field' },
    { case: 'tomorrow', request: { date: '2026-11-26' }, code: 'date-in-future' },
    { case: 'an unknown paper', request: { papers: ['0'.repeat(64)] }, code: 'unknown-paper' },
    { case: 'an item of another car', request: { lines: [{ item: 'belt', name: 'Belt', work: 'check', outcome: 'good', minutes: null, note: '' }] }, code: 'unknown-item' },
    { case: 'an unknown item', request: { lines: [{ item: 'none', name: 'Belt', work: 'check', outcome: 'good', minutes: null, note: '' }] }, code: 'unknown-item' },
  ])('$case is refused: $code', ({ request, code }) => {
    const all = added();
    const before = all.entries.length;
    expect(all.call('record.amend', { id: 'w', why: 'slip', ...request } as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(all.entries).toHaveLength(before);
  });
});
