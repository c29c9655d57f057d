import { describe, expect, test } from 'vitest';
import { serviceItems } from '../../../shared-core/care/service-item.ts';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { readings } from '../../../shared-core/fleet/reading.ts';
import { newEntry, type Entry } from '../../../shared-core/journal/entry-kind.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import { answerIntake } from '../../../shared-core/records/answer-intake.ts';
import { intakeAnswers } from '../../../shared-core/records/intake-answer.ts';
import { paperKept } from '../../../shared-core/records/paper.ts';
import { workRecords } from '../../../shared-core/records/work-record.ts';
import { parseRequest } from '../../../shared-core/result/parse-request.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

const RECEIPT = 'a'.repeat(64);
type Request = Omit<RequestOf<'intake.answer'>, 'car'>;

/** Pip, bought on 2026-11-01, with oil to be replaced and pads to be checked, and a receipt that is kept. */
function bought(car: object = {}) {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-03-01'), keptSince: day('2026-11-01'), ...car });
  household.must('car.add', { id: 'wren', name: 'Wren' });
  household.must('reading.record', { car: 'pip', value: 60_000, date: day('2026-11-01') });
  household.must('item.add', { id: 'oil', car: 'pip', name: 'Engine oil', interval: { repeat: { months: 12, distance: null } } });
  household.must('item.add', { id: 'pads', car: 'pip', name: 'Pads', work: 'check', interval: { repeat: { months: 12, distance: null } } });
  household.must('item.add', { id: 'belt', car: 'wren', name: 'Belt', interval: { repeat: { months: 12, distance: null } } });
  const entries: Entry[] = [...household.entries, { ...newEntry(paperKept, { id: RECEIPT, name: 'receipt.pdf', media: 'application/pdf', bytes: 9 }), seq: household.entries.length, at: '2026-11-25T12:00:00.000Z' }];
  let ids = 0;
  const facts = () => memoryFacts(entryKinds, entries);
  const answer = (request: Request) => {
    const parsed = parseRequest(answerIntake.request, { car: 'Pip', ...request });
    if (!parsed.ok) return parsed;
    const decided = answerIntake.decide(facts(), parsed.value, { today: day('2026-11-25'), now: '2026-11-25T12:00:00.000Z', newId: () => `id-${(ids += 1)}` });
    if (decided.ok) for (const entry of decided.value.entries) entries.push({ ...entry, seq: entries.length, at: '2026-11-25T12:00:00.000Z' });
    return decided;
  };
  const must = (request: Request) => {
    const decided = answer(request);
    if (!decided.ok) throw new Error(decided.refusal.code);
    return decided.value;
  };
  return { entries, facts, answer, must };
}

describe('an answer', () => {
  test('that a paper proves is a work record, marked as reconstructed, with its paper', () => {
    const all = bought();
    const { entries, reply } = all.must({ item: 'oil', answer: 'proven', date: day('2026-03-10'), papers: [RECEIPT], placeName: 'Hill Garage', reading: { value: 52_000, unit: 'km' } });
    expect(entries.map((entry) => entry.kind)).toEqual(['reading-recorded', 'work-recorded', 'intake-answered']);
    expect(reply.record).toMatchObject({ car: 'pip', date: '2026-03-10', title: 'Engine oil', place: 'garage', placeName: 'Hill Garage', papers: [RECEIPT], reconstructed: true, lines: [{ item: 'oil', work: 'replace', outcome: 'done' }] });
    expect(all.facts().get(readings, reply.record?.reading ?? '')).toMatchObject({ date: '2026-03-10', standing: 'accepted', paper: RECEIPT });
    expect(all.facts().all(intakeAnswers)).toEqual([{ id: reply.answer.id, car: 'pip', item: 'oil', answer: 'proven', on: '2026-11-25', record: reply.record?.id }]);
  });

  test('that someone gives without a paper is a record without one; a check was good', () => {
    const { reply } = bought().must({ item: 'pads', answer: 'said', date: day('2026-03-10'), note: 'The seller says so.' });
    expect(reply.record).toMatchObject({ papers: [], reconstructed: true, note: 'The seller says so.', lines: [{ item: 'pads', work: 'check', outcome: 'good' }] });
  });

  test.each([
    { answer: 'unknown', history: 'unknown' }, { answer: 'from-purchase', history: 'from-purchase' }, { answer: 'never-done', history: 'never-done' },
  ] as const)('of $answer makes no record: it is the item\'s history', ({ answer, history }) => {
    const all = bought();
    const { entries, reply } = all.must({ item: 'oil', answer });
    expect([entries.map((entry) => entry.kind), reply.record]).toEqual([['service-item-set', 'intake-answered'], null]);
    expect([all.facts().get(serviceItems, 'oil')?.history, all.facts().all(workRecords)]).toEqual([history, []]);
  });

  test('unknown is never taken as done', () => {
    const all = bought();
    all.must({ item: 'oil', answer: 'never-done' });
    all.must({ item: 'oil', answer: 'unknown' });
    expect(all.facts().get(serviceItems, 'oil')?.history).toBe('unknown');
  });
});

describe('an answer given anew', () => {
  test('with the paper found adds it to the same record, and corrects its day', () => {
    const all = bought();
    const said = all.must({ item: 'oil', answer: 'said', date: day('2026-03-01') }).reply;
    const proven = all.must({ item: 'oil', answer: 'proven', date: day('2026-03-10'), papers: [RECEIPT] });
    expect(proven.entries.map((entry) => entry.kind)).toEqual(['work-amended', 'intake-answered']);
    expect(all.facts().all(workRecords)).toMatchObject([{ id: said.record?.id, date: '2026-03-10', papers: [RECEIPT] }]);
    expect(all.facts().all(intakeAnswers)).toMatchObject([{ id: said.answer.id, answer: 'proven', record: said.record?.id }]);
  });

  test('that nobody knows after all leaves the line undone in its record; and it may be said again', () => {
    const all = bought();
    all.must({ item: 'oil', answer: 'said', date: day('2026-03-01') });
    all.must({ item: 'oil', answer: 'unknown' });
    expect(all.facts().all(workRecords)).toMatchObject([{ lines: [{ item: 'oil', outcome: 'not-done' }] }]);
    all.must({ item: 'oil', answer: 'said', date: day('2026-04-01') });
    expect(all.facts().all(workRecords)).toMatchObject([{ date: '2026-04-01', lines: [{ item: 'oil', outcome: 'done' }] }]);
  });

  test('a check said again was good', () => {
    const all = bought();
    all.must({ item: 'pads', answer: 'said', date: day('2026-03-01') });
    all.must({ item: 'pads', answer: 'from-purchase' });
    expect(all.facts().get(serviceItems, 'pads')?.history).toBe('from-purchase');
    all.must({ item: 'pads', answer: 'said', date: day('2026-03-01') });
    expect(all.facts().all(workRecords)).toMatchObject([{ lines: [{ outcome: 'good' }] }]);
  });

  test('takes a reading where there is none yet, in one correction, and no second one', () => {
    const all = bought();
    all.must({ item: 'oil', answer: 'said', date: day('2026-03-01') });
    const read = { item: 'oil', answer: 'said', date: day('2026-03-02'), reading: { value: 52_000, unit: 'km' } } as const;
    const { entries } = all.must(read);
    expect(entries.map((entry) => entry.kind)).toEqual(['reading-recorded', 'work-amended', 'intake-answered']);
    const [record] = all.facts().all(workRecords);
    expect(record).toMatchObject({ date: '2026-03-02', lines: [{ outcome: 'done' }] });
    expect(all.facts().get(readings, record?.reading ?? '')).toMatchObject({ date: '2026-03-02', source: 'record', standing: 'accepted' });
    expect(all.answer(read)).toMatchObject({ ok: false, refusal: { code: 'reading-given-before', path: ['reading'] } });
  });
});

test.each([
  { case: 'an unknown item', request: { item: 'none', answer: 'unknown' }, code: 'unknown-item' },
  { case: 'an item of another car', request: { item: 'belt', answer: 'unknown' }, code: 'unknown-item' },
  { case: 'done on no day', request: { item: 'oil', answer: 'said' }, code: 'answer-needs-date' },
  { case: 'proven on no day', request: { item: 'oil', answer: 'proven', papers: [RECEIPT] }, code: 'answer-needs-date' },
  { case: 'proven by nothing', request: { item: 'oil', answer: 'proven', date: day('2026-03-10') }, code: 'proven-needs-paper' },
  { case: 'proven by a paper that nobody kept', request: { item: 'oil', answer: 'proven', date: day('2026-03-10'), papers: ['b'.repeat(64)] }, code: 'unknown-paper' },
  { case: 'said, with a paper', request: { item: 'oil', answer: 'said', date: day('2026-03-10'), papers: [RECEIPT] }, code: 'said-has-paper' },
  { case: 'unknown on a day', request: { item: 'oil', answer: 'unknown', date: day('2026-03-10') }, code: 'answer-takes-no-date' },
  { case: 'unknown at a reading', request: { item: 'oil', answer: 'unknown', reading: { value: 1, unit: 'km' } }, code: 'answer-takes-no-date' },
  { case: 'never done, with a paper', request: { item: 'oil', answer: 'never-done', papers: [RECEIPT] }, code: 'answer-takes-no-date' },
  { case: 'done tomorrow', request: { item: 'oil', answer: 'said', date: day('2026-11-26') }, code: 'date-in-future' },
  { case: 'done before the car was there', request: { item: 'oil', answer: 'said', date: day('2020-02-29') }, code: 'before-registration' },
] as const)('$case is refused: $code', ({ request, code }) => {
  const all = bought();
  const before = all.entries.length;
  expect(all.answer(request as unknown as Request)).toMatchObject({ ok: false, refusal: { code } });
  expect(all.entries).toHaveLength(before);
});

test('counted from a purchase that nobody has entered is refused', () => {
  expect(bought({ firstRegistered: null, keptSince: null }).answer({ item: 'oil', answer: 'from-purchase' })).toMatchObject({ ok: false, refusal: { code: 'purchase-not-known' } });
  expect(bought({ keptSince: null }).answer({ item: 'oil', answer: 'from-purchase' })).toMatchObject({ ok: false, refusal: { code: 'purchase-not-known', path: ['answer'] } });
});
