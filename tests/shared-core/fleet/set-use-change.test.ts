import { describe, expect, test } from 'vitest';
import { useChanges } from '../../../shared-core/fleet/use-change.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** Pip, 7305 km a year (20 a day), read on 2026-05-01. */
function withPip(): MemoryHousehold {
  const household = memoryHousehold({ hemisphere: 'none' });
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-03-01') });
  for (const [date, value] of [['2025-05-01', 20_000], ['2025-11-01', 23_680], ['2026-05-01', 27_300]] as const) household.must('reading.record', { car: 'pip', value, date: day(date) });
  return household;
}

const set = (household: MemoryHousehold, date: string, kmAYear: number | null = null, id?: string) =>
  household.call('use-change.set', { ...(id === undefined ? {} : { id }), car: 'pip', date: day(date), declaredAYear: kmAYear === null ? null : { value: kmAYear, unit: 'km' }, note: 'I drive to work' });
const shown = (household: MemoryHousehold) => household.must('car.show', { car: 'pip' });
const likelyNow = (household: MemoryHousehold) => shown(household).due.odometer?.likely ?? 0;

describe('a change of use', () => {
  test('with a figure: from its day on the odometer goes by it', () => {
    const household = withPip();
    const before = likelyNow(household);
    expect(set(household, '2026-05-01', 30_000)).toMatchObject({ ok: true, value: { useChange: { id: 'new-4', date: '2026-05-01', declaredAYear: { value: 30_000, unit: 'km' } } } });
    expect(shown(household).usageNotes.map(({ code }) => code)).toEqual(['use-changed']);
    // By hand: 208 days at 82.1 km instead of about 20.
    expect(before).toBeLessThan(32_000);
    expect(likelyNow(household)).toBe(27_300 + Math.round((208 * 30_000) / 365.25));
    expect(shown(household)).toMatchObject({ usage: { kmAYear: 30_000, prior: 'declared', since: '2026-05-01' }, useChanges: [{ date: '2026-05-01', note: 'I drive to work' }] });
  });

  test('without one: its first readings count at once, where the old ones weighed against them', () => {
    const household = withPip();
    household.must('reading.record', { car: 'pip', value: 33_400, date: day('2026-08-10') });
    const unsaid = shown(household).usage?.kmAYear ?? 0;
    set(household, '2026-05-01');
    const usage = shown(household).usage;
    // By hand: 6100 km in 101 days is 22 060 a year.
    expect(unsaid).toBeLessThan(14_000);
    expect(usage?.kmAYear).toBeGreaterThan(17_000);
    expect(usage).toMatchObject({ prior: 'generic', since: '2026-05-01' });
  });

  test('makes a reading fit that the old use did not explain: it only waits to be confirmed', () => {
    const household = withPip();
    expect(household.must('reading.record', { car: 'pip', value: 35_600, date: day('2026-08-10') }).state).toBe('set-aside');
    set(household, '2026-05-01');
    expect(shown(household).due.doubtful).toMatchObject([{ code: 'too-high', fitsNow: true }]);
  });

  test('asks for a reading until there is one', () => {
    const household = withPip();
    const notes = () => shown(household).usageNotes.map(({ code }) => code);
    set(household, '2026-06-01');
    expect([notes(), shown(household).usage?.since]).toEqual([['use-changed-unread'], null]);
    household.must('reading.record', { car: 'pip', value: 31_000, date: day('2026-09-01') });
    expect([notes(), shown(household).usage?.since]).toEqual([['use-changed'], '2026-06-01']);
  });

  test('to come, it is not yet spoken of, but foreseen', () => {
    const household = withPip();
    household.must('item.add', { id: 'oil', car: 'pip', name: 'oil', interval: { first: { months: null, distance: { value: 45_000, unit: 'km' } }, repeat: { months: null, distance: { value: 15_000, unit: 'km' } } }, history: 'never-done' });
    const likely = () => household.must('due.show', {}).cars[0]?.windows[0]?.likely ?? '';
    const before = likely();
    set(household, '2027-01-01', 50_000);
    expect(shown(household).usageNotes).toEqual([]);
    expect(before > '2028').toBe(true);
    expect(likely() > '2027-01-01' && likely() < '2027-06-01').toBe(true);
  });

  test('a figure far from what is read since is set aside, and the keeper is told both', () => {
    const household = withPip();
    set(household, '2026-01-01', 60_000);
    for (const [date, value] of [['2026-01-01', 24_900], ['2026-08-01', 29_140]] as const) household.must('reading.record', { car: 'pip', value, date: day(date) });
    expect(shown(household).usage?.prior).toBe('declared-set-aside');
    const [note] = shown(household).usageNotes;
    expect(note).toMatchObject({ code: 'declared-far-off' });
    expect(note?.text).toMatch(/^You expect 60\u202f000 km a year, but the readings say about 7[23]00 km\./);
  });

  test('the figure of the car is told so too, in the car\'s unit', () => {
    const household = withPip();
    household.must('car.change', { id: 'pip', unit: 'mi', declaredAYear: { value: 40_000, unit: 'km' } });
    expect(shown(household).usageNotes[0]?.text).toMatch(/^You expect 40\u202f000 km a year, but the readings say about 4500 mi\./);
  });

  test('stated anew by its id, and taken back', () => {
    const household = withPip();
    const before = shown(household).usage;
    set(household, '2026-05-01', 30_000, 'work');
    expect(set(household, '2026-04-01', 20_000, 'work')).toMatchObject({ ok: true });
    expect(household.facts().ofCar(useChanges, 'pip')).toMatchObject([{ date: '2026-04-01', declaredAYear: { value: 20_000 } }]);
    household.must('use-change.remove', { id: 'work' });
    expect([shown(household).usage, shown(household).useChanges]).toEqual([before, []]);
  });

  test.each([
    { case: 'before the car was there', date: '2020-02-29', id: undefined, code: 'before-registration' },
    { case: 'on the day of another', date: '2026-05-01', id: undefined, code: 'use-changed-that-day' },
    { case: 'with an id of another car\'s', date: '2026-04-01', id: 'of-wren', code: 'id-taken' },
  ])('one $case is refused: $code', ({ date, id, code }) => {
    const household = withPip();
    household.must('car.add', { id: 'wren', name: 'Wren' });
    household.must('use-change.set', { id: 'of-wren', car: 'wren', date: day('2026-01-01') });
    set(household, '2026-05-01');
    expect(set(household, date, null, id)).toMatchObject({ ok: false, refusal: { code } });
  });

  test.each([0, 0.0003])('a figure of %d km a year, less than a metre, is none', (kmAYear) => {
    const household = withPip();
    household.must('car.change', { id: 'pip', declaredAYear: { value: kmAYear, unit: 'km' } });
    expect(shown(household).usage?.prior).toBe('generic');
    set(household, '2026-05-01', kmAYear);
    expect(shown(household).usage).toMatchObject({ prior: 'generic', since: '2026-05-01' });
  });

  test('one that is not there is not taken back, a figure below 0 is none', () => {
    expect(withPip().call('use-change.remove', { id: 'none' })).toMatchObject({ ok: false, refusal: { code: 'unknown-use-change' } });
    expect(set(withPip(), '2026-05-01', -1)).toMatchObject({ ok: false, refusal: { code: 'not-a-distance' } });
  });
});
