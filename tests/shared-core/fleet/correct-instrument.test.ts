import { describe, expect, test } from 'vitest';
import { instruments } from '../../../shared-core/fleet/instrument.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** A camper whose instrument was replaced on 2025-07-01, nobody knows at what distance, and again on 2026-07-01 at 9010 km. */
function withCamper(): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'camper', name: 'Camper' });
  household.must('reading.record', { car: 'camper', value: 90_000, date: day('2024-01-10') });
  household.must('reading.record', { car: 'camper', value: 100_000, date: day('2025-01-09') });
  household.must('reading.record', { car: 'camper', value: 10, date: day('2025-07-01'), replaced: {} });
  household.must('reading.record', { car: 'camper', value: 500, date: day('2026-07-01'), replaced: { lastShown: { value: 9010, unit: 'km' } } });
  return household;
}

const standing = (household: MemoryHousehold) => [...household.facts().ofCar(instruments, 'camper')].sort((a, b) => (a.date < b.date ? -1 : 1));
const correct = (household: MemoryHousehold, value: number, sure = false) => {
  const [first] = standing(household);
  return household.call('instrument.correct', { instrument: first?.id ?? '', lastShown: { value, unit: 'km' }, sure });
};

describe('correcting an estimated instrument', () => {
  test('what was read takes the place of the estimate, and later ones move with it', () => {
    const household = withCamper();
    const [before, beforeSecond] = standing(household);
    expect(before?.estimated).toBe(true);
    expect(correct(household, 104_000)).toMatchObject({ ok: true, value: { instrument: { distance: 104_000_000, estimated: false } } });
    const [after, second] = standing(household);
    // By hand: 104 000 + 9010 - 10 km at the second one.
    expect([after?.distance, second?.distance]).toEqual([104_000_000, 113_000_000]);
    expect(second).toEqual({ ...beforeSecond, distance: 113_000_000 });
    expect(household.must('due.show', {}).cars[0]?.doubtful).toEqual([]);
  });

  test('in miles too', () => {
    const household = withCamper();
    const [first] = standing(household);
    household.must('instrument.correct', { instrument: first?.id ?? '', lastShown: { value: 65_000, unit: 'mi' }, note: 'on the invoice' });
    expect(standing(household)[0]).toMatchObject({ distance: 104_607_360, note: 'on the invoice', unit: 'km' });
  });

  test('the second is corrected by what the first new one showed', () => {
    const household = withCamper();
    correct(household, 104_000);
    const second = standing(household)[1];
    household.must('instrument.correct', { instrument: second?.id ?? '', lastShown: { value: 9510, unit: 'km' } });
    expect(standing(household).map(({ distance }) => distance)).toEqual([104_000_000, 113_500_000]);
  });

  test('readings of a used new one that shows less say nothing against it', () => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'camper', name: 'Camper' });
    for (const [date, value] of [['2024-01-10', 90_000], ['2025-01-09', 100_000]] as const) household.must('reading.record', { car: 'camper', value, date: day(date) });
    household.must('reading.record', { car: 'camper', value: 101_000, date: day('2025-07-01'), replaced: {} });
    household.must('reading.record', { car: 'camper', value: 102_000, date: day('2025-09-01') });
    expect(correct(household, 104_000)).toMatchObject({ ok: true });
  });

  test('what does not fit the readings before is refused, unless the keeper is sure', () => {
    const household = withCamper();
    expect(correct(household, 99_999)).toMatchObject({ ok: false, refusal: { code: 'last-shown-doubtful' } });
    expect(correct(household, 300_000)).toMatchObject({ ok: false, refusal: { code: 'last-shown-doubtful' } });
    expect(correct(household, 300_000, true)).toMatchObject({ ok: true });
    expect(household.call('instrument.correct', { instrument: 'none', lastShown: { value: 1, unit: 'km' } })).toMatchObject({ ok: false, refusal: { code: 'unknown-instrument' } });
  });
});
