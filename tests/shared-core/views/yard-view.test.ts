import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold, unstartedHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** Two cars with dates in and beyond the next 90 days of 2026-11-25, which end on 2027-02-23. */
function yard(): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'wren', name: 'Wren', unit: 'mi', laidUpMonths: [12, 1] });
  household.must('car.add', { id: 'pip', name: 'Pip', description: 'small hatch', year: 2020 });
  const add = (id: string, firstDate: string, minutes: number | null) =>
    household.must('item.add', { id, car: 'pip', name: id, interval: { repeat: { months: 12, distance: null } }, anchor: { kind: 'calendar', firstDate: day(firstDate) }, minutes });
  add('late', '2026-11-24', 30);
  add('today', '2026-11-25', null);
  add('last-day', '2027-02-23', 45);
  add('day-after', '2027-02-24', 600);
  household.must('item.add', { id: 'unknown', car: 'pip', name: 'unknown', interval: { repeat: { months: 12, distance: null } }, minutes: 600 });
  household.must('obligation.add', { car: 'wren', kind: 'insurance', lastValidDay: day('2027-02-23') });
  household.must('obligation.add', { car: 'wren', kind: 'road-tax', lastValidDay: day('2027-02-24') });
  return household;
}

describe('the yard', () => {
  // By hand: late, today and the last day are three; 30 + 45 minutes known, one without.
  test('counts what falls due within 90 days, late ones among them', () => {
    expect(yard().must('yard.show', {}).ahead).toEqual({ days: 90, items: 3, late: 1, obligations: 1, recalls: 0, allowances: 0, minutes: 75, withoutMinutes: 1 });
  });

  test('has a lane for each car, by name', () => {
    const { lanes, today, household } = yard().must('yard.show', {});
    expect([today, household.currency]).toEqual(['2026-11-25', 'GBP']);
    expect(lanes).toMatchObject([
      { id: 'pip', description: 'small hatch', year: 2020, unit: 'km', lastReadOn: null, instrumentReplacedOn: null },
      { id: 'wren', description: null, year: null, unit: 'mi', windows: [] },
    ]);
    expect(lanes[0]?.work['late']).toEqual({ minutes: 30, place: 'either', harm: 'damage' });
    expect(lanes[0]?.windows.map((window) => window.item)).toEqual(['late', 'today', 'last-day', 'day-after', 'unknown']);
  });

  test('says when the odometer was last read and when the instrument was replaced', () => {
    const household = yard();
    household.must('reading.record', { car: 'pip', value: 40_000, date: day('2026-01-10') });
    household.must('reading.record', { car: 'pip', value: 5, date: day('2026-06-01'), replaced: {} });
    expect(household.must('yard.show', {}).lanes[0]).toMatchObject({ lastReadOn: '2026-06-01', instrumentReplacedOn: '2026-06-01' });
  });

  test('needs a household', () => {
    expect(unstartedHousehold().call('yard.show', {})).toMatchObject({ ok: false, refusal: { code: 'household-not-started' } });
  });
});
