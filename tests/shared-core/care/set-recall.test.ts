import { describe, expect, test } from 'vitest';
import { hasWords } from '../../../shared-core/result/words/say.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

function withPip(): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2022-11-01') });
  household.must('car.add', { id: 'wren', name: 'Wren' });
  return household;
}

const recall = { car: 'Pip', number: 'R-104', what: 'Seat belt anchor' };
const set = (household: MemoryHousehold, more: Partial<RequestOf<'recall.set'>> = {}) => household.must('recall.set', { ...recall, ...more }).recall;
const dueRecalls = (household: MemoryHousehold) => household.must('due.show', {}).cars.find((car) => car.id === 'pip')?.recalls ?? [];

describe('a recall', () => {
  test.each([
    { case: 'not done', more: {}, state: 'open', late: false, arrangeFrom: '2026-11-25', text: 'Recall R-104 is not done. Book it.' },
    { case: 'booked', more: { nextOn: day('2026-11-25') }, state: 'booked', late: false, arrangeFrom: '2026-11-11', text: 'Recall R-104 is booked for 25 Nov 2026.' },
    { case: 'booked for a day that has passed', more: { nextOn: day('2026-11-24') }, state: 'booked', late: true, arrangeFrom: '2026-11-10', text: 'Recall R-104 was booked for 24 Nov 2026. Enter how it was done, or book it again.' },
    { case: 'done and due again', more: { doneOn: day('2026-10-01'), how: 'Looked at', nextOn: day('2027-10-01') }, state: 'again', late: false, arrangeFrom: '2027-09-17', text: 'Recall R-104 was done on 1 Oct 2026 and is due again on 1 Oct 2027.' },
    { case: 'done, due again and late', more: { doneOn: day('2025-10-01'), how: 'Looked at', nextOn: day('2026-10-01') }, state: 'again', late: true, arrangeFrom: '2026-09-17', text: 'Recall R-104 was due again on 1 Oct 2026.' },
    // Arrange from: 14 days before its day (DESIGN section 4); an open one from the day it was entered.
  ] as const)('$case: $state', ({ more, state, late, arrangeFrom, text }) => {
    const household = withPip();
    const stated = set(household, more);
    expect(dueRecalls(household)).toEqual([{ recall: stated, state, late, arrangeFrom, text }]);
  });

  test('an open one is to be arranged from the day it was entered, also when it is stated anew', () => {
    const household = withPip();
    const { id } = set(household.on('2026-10-01'));
    set(household.on('2026-11-01'), { id, what: 'Seat belt anchor, left' });
    expect(dueRecalls(household.on('2026-11-25'))[0]?.arrangeFrom).toBe('2026-10-01');
    // Asked of a day before it was entered, it is to be arranged on that day.
    expect(dueRecalls(household.on('2026-09-01'))[0]?.arrangeFrom).toBe('2026-09-01');
  });

  test('done is shown with the car and not among what is due', () => {
    const household = withPip();
    const { id } = set(household);
    set(household, { id, doneOn: day('2026-11-20'), how: 'Anchor replaced', doneBy: 'Hill Garage' });
    expect(dueRecalls(household)).toEqual([]);
    expect(household.must('car.show', { car: 'pip' }).recalls).toMatchObject([{ state: 'done', late: false, arrangeFrom: null, text: 'Recall R-104 was done on 20 Nov 2026: Anchor replaced.', recall: { id, doneBy: 'Hill Garage' } }]);
  });

  test('open ones come first, then by day, then by number', () => {
    const household = withPip();
    for (const [number, more] of [['5', { doneOn: day('2026-01-01'), how: 'x' }], ['4', { nextOn: day('2027-02-01') }], ['3', { nextOn: day('2027-01-01') }], ['2', {}], ['1', {}], ['6', { doneOn: day('2026-01-01'), how: 'x', nextOn: day('2026-12-01') }]] as const) set(household, { number, ...more });
    expect(household.must('car.show', { car: 'pip' }).recalls.map((one) => one.recall.number)).toEqual(['1', '2', '3', '4', '6', '5']);
    expect(household.must('car.show', { car: 'wren' }).recalls).toEqual([]);
  });

  test.each([
    { case: 'an unknown car', more: { car: 'nobody' }, code: 'unknown-car' },
    { case: 'the same number again', more: { number: ' r-1 ' }, code: 'recall-known' },
    { case: 'how without a day', more: { how: 'Replaced' }, code: 'recall-done-when' },
    { case: 'by whom without a day', more: { doneBy: 'Hill Garage' }, code: 'recall-done-when' },
    { case: 'done in no way', more: { doneOn: '2026-11-20' }, code: 'recall-done-how' },
    { case: 'done tomorrow', more: { doneOn: '2026-11-26', how: 'Replaced' }, code: 'date-in-future' },
    { case: 'done before the car was there', more: { doneOn: '2022-10-31', how: 'Replaced' }, code: 'before-registration' },
    { case: 'due again on the day it was done', more: { doneOn: '2026-11-20', how: 'Replaced', nextOn: '2026-11-20' }, code: 'recall-next-before' },
    { case: 'no number', more: { number: '' }, code: 'text-empty' },
    { case: 'an id of another car\'s', more: { id: 'of-wren' }, code: 'id-taken' },
  ])('$case is refused: $code', ({ more, code }) => {
    const household = withPip();
    set(household, { number: 'R-1' });
    household.must('recall.set', { id: 'of-wren', car: 'wren', number: 'R-104', what: 'Airbag' });
    const before = household.entries.length;
    expect(household.call('recall.set', { ...recall, ...more } as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(before);
  });
});

test('every state has its words', () => {
  expect(['open', 'booked', 'booked-late', 'done', 'again', 'again-late'].filter((state) => !hasWords(`recall-${state}`))).toEqual([]);
});
