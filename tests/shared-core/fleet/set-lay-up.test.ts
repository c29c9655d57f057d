import { describe, expect, test } from 'vitest';
import { layUps } from '../../../shared-core/fleet/lay-up.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** Two cars of 14 600 km a year, read on 2026-10-25; Pip has an oil change every 5000 km, never done since 45 000 km. */
function withPip(): MemoryHousehold {
  const household = memoryHousehold({ hemisphere: 'none' });
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-03-01') });
  household.must('car.add', { id: 'wren', name: 'Wren' });
  for (const [date, value] of [['2025-10-25', 30_000], ['2026-04-25', 37_280], ['2026-10-25', 44_600]] as const) household.must('reading.record', { car: 'pip', value, date: day(date) });
  household.must('item.add', { id: 'oil', car: 'pip', name: 'oil', interval: { first: { months: null, distance: { value: 50_000, unit: 'km' } }, repeat: { months: null, distance: { value: 5000, unit: 'km' } } }, history: 'never-done' });
  return household;
}

const set = (household: MemoryHousehold, from: string, to: string | null = null, id?: string) =>
  household.call('lay-up.set', { ...(id === undefined ? {} : { id }), car: 'pip', from: day(from), to: to === null ? null : day(to) });
const likely = (household: MemoryHousehold) => household.must('due.show', {}).cars.find(({ id }) => id === 'pip')?.windows[0]?.likely ?? null;
const notes = (household: MemoryHousehold) => household.must('car.show', { car: 'pip' }).usageNotes.map(({ code }) => code);

describe('a dated lay-up', () => {
  test('moves what is due by distance, and what time asks for stays', () => {
    const household = withPip();
    const before = likely(household) ?? '';
    expect(before.slice(0, 7)).toBe('2027-03');
    expect(set(household, '2026-11-01', '2027-03-31')).toMatchObject({ ok: true, value: { layUp: { id: 'new-4', car: 'pip', from: '2026-11-01', to: '2027-03-31', note: '' } } });
    // By hand: 151 days of about 40 km, a twentieth of which is still driven.
    expect((likely(household) ?? '').slice(0, 7)).toBe('2027-08');
    expect(household.must('car.show', { car: 'pip' }).layUps).toMatchObject([{ from: '2026-11-01', to: '2027-03-31' }]);
  });

  test('with no end: nothing is foreseen by distance until it is given', () => {
    const household = withPip();
    set(household, '2026-11-01', null, 'winter');
    expect([likely(household), notes(household)]).toEqual([null, ['lay-up-open']]);
    expect(set(household, '2026-11-01', '2026-11-30', 'winter')).toMatchObject({ ok: true });
    expect((likely(household) ?? '').slice(0, 7)).toBe('2027-04');
    expect(notes(household)).toEqual([]);
    expect(household.facts().ofCar(layUps, 'pip')).toHaveLength(1);
  });

  test('past: its days do not make the car look little driven', () => {
    const household = withPip();
    const aYear = () => household.must('car.show', { car: 'pip' }).usage?.kmAYear ?? 0;
    const before = aYear();
    set(household, '2026-05-01', '2026-07-31');
    expect(aYear()).toBeGreaterThan(before * 1.2);
  });

  test('taken back, all is as before', () => {
    const household = withPip();
    const before = likely(household);
    set(household, '2026-11-01', null, 'winter');
    expect(household.must('lay-up.remove', { id: 'winter' }).layUp.from).toBe('2026-11-01');
    expect([likely(household), household.must('car.show', { car: 'pip' }).layUps]).toEqual([before, []]);
    expect(set(household, '2026-11-01', '2026-11-02', 'winter')).toMatchObject({ ok: true });
  });

  test.each([
    { case: 'more than 300 km between two readings of it', km: 301, said: ['lay-up-open', 'lay-up-driven'] },
    { case: 'moved about', km: 300, said: ['lay-up-open'] },
  ])('$case', ({ km, said }) => {
    const household = withPip();
    set(household, '2026-10-25');
    household.must('reading.record', { car: 'pip', value: 44_600 + km, sure: true });
    expect(notes(household)).toEqual(said);
  });

  test.each([
    { case: 'that ends before it begins', from: '2026-11-02', to: '2026-11-01', id: undefined, code: 'lay-up-ends-before' },
    { case: 'before the car was there', from: '2020-02-29', to: '2020-05-01', id: undefined, code: 'before-registration' },
    { case: 'that begins on the last day of another', from: '2026-02-28', to: null, id: undefined, code: 'lay-up-overlaps' },
    { case: 'that holds another', from: '2025-01-01', to: '2026-08-01', id: undefined, code: 'lay-up-overlaps' },
    { case: 'after one with no end', from: '2027-05-01', to: '2027-06-01', id: undefined, code: 'lay-up-overlaps-open' },
    { case: 'with an id of another car\'s', from: '2026-04-01', to: '2026-04-02', id: 'of-wren', code: 'id-taken' },
  ])('one $case is refused: $code', ({ from, to, id, code }) => {
    const household = withPip();
    set(household, '2025-12-01', '2026-02-28');
    set(household, '2026-12-01');
    household.must('lay-up.set', { id: 'of-wren', car: 'wren', from: day('2026-01-01') });
    expect(set(household, from, to, id)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.facts().ofCar(layUps, 'pip')).toHaveLength(2);
  });

  test('the day after another it may begin; one that is not there is not taken back', () => {
    const household = withPip();
    set(household, '2025-12-01', '2026-02-28');
    expect(set(household, '2026-03-01', '2026-03-01')).toMatchObject({ ok: true });
    expect(household.call('lay-up.remove', { id: 'none' })).toMatchObject({ ok: false, refusal: { code: 'unknown-lay-up' } });
  });
});
