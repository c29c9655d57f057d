import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

export const SESSION_DAY = '2026-12-05';

/** A petrol car with an oil change that has a sheet, a look at its brakes that has one, and a polish that has none; kept at home for one day. */
export function householdWithSession(tasks: readonly string[] = ['polish', 'brakes', 'oil']): MemoryHousehold {
  const household = memoryHousehold();
  const interval = { repeat: { months: 12, distance: { value: 15_000, unit: 'km' as const } } };
  household.must('car.add', { id: 'pip', name: 'Pip', power: 'petrol', year: 2022, firstRegistered: '2022-03-01' as never });
  household.must('reading.record', { car: 'pip', value: 40_000, unit: 'km', date: '2026-06-01' as never });
  household.must('reading.record', { car: 'pip', value: 45_000, unit: 'km', date: '2026-11-20' as never });
  household.must('specification.set', { id: 'oil-a', name: 'oil A', unit: 'litre' });
  household.must('specification.set', { id: 'filter', name: 'oil filter', unit: 'each' });
  household.must('part.set', { id: 'can', name: 'can of oil', meets: ['oil-a'] });
  household.must('item.add', { id: 'oil', car: 'pip', name: 'Engine oil and filter', interval, minutes: 45, access: ['undertray'], needs: [{ specification: 'oil-a', quantity: 4 }, { specification: 'filter', quantity: 1 }] });
  household.must('item.add', { id: 'brakes', car: 'pip', name: 'Brake pads and discs', interval, work: 'check', minutes: 30 });
  household.must('item.add', { id: 'polish', car: 'pip', name: 'Polish', interval });
  household.must('lot.set', { id: 'lot-1', part: 'can', quantity: 5, receivedOn: '2026-01-02' as never, where: 'shelf, floor' });
  household.must('sheet.set', { item: 'oil', checks: ['No drop below'], reset: 'Set the reminder back', followUps: [{ text: 'Level once more', days: 1, distance: null }], steps: [
    { text: 'Take the undertray off.', access: { name: 'undertray', way: 'open' } },
    { text: 'Drain the oil.', turn: 'drain', hazards: ['hot', 'used-oil'], disposal: ['used-oil'], torques: [{ by: 'own', name: 'Drain plug', typed: { value: 30, unit: 'Nm' }, source: 'handbook' }] },
    { text: 'Fill it in.', turn: 'fill' },
  ] });
  household.must('sheet.set', { item: 'brakes', steps: [{ text: 'Measure the outer pad.', hazards: ['brakes'], measure: { kind: 'pad', name: null, place: 'front-left' } }, { text: 'Look at the hoses.' }] });
  household.must('session.keep', { sessions: [{ day: SESSION_DAY as never, place: 'home', tasks: tasks.map((id) => ({ kind: 'item' as const, id })) }] });
  return household;
}

/** The id of its session. */
export function sessionOf(household: MemoryHousehold): string {
  return household.must('sessions.show', {}).sessions[0]?.id ?? '';
}

/** The same on the day of the session, begun at nine. */
export function begunHousehold(tasks?: readonly string[]): { readonly household: MemoryHousehold; readonly session: string } {
  const household = householdWithSession(tasks);
  const session = sessionOf(household);
  household.on(SESSION_DAY).at('09:00:00').must('work.begin', { session });
  return { household, session };
}
