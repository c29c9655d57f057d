import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** Two cars and a garage that wants ten days' notice; a session "visit" of three tasks is kept there for 16 December 2026, a Wednesday. */
export function withVisit(): MemoryHousehold {
  const household = memoryHousehold({ currency: 'GBP' });
  household.must('car.add', { id: 'pip', name: 'Pip', power: 'petrol', registration: 'AB 12', description: 'small hatch' });
  household.must('car.add', { id: 'moss', name: 'Moss', power: 'diesel', use: 'hobby' });
  household.must('place.set', { id: 'corner', name: 'the corner garage', kind: 'garage', noticeDays: 10 });
  household.must('place.set', { id: 'hill', name: 'the hill garage', kind: 'garage', noticeDays: 3 });
  const interval = { repeat: { months: 12, distance: null } };
  for (const [id, car, name] of [['fluid', 'pip', 'Brake fluid'], ['pads', 'pip', 'Brake pads and discs'], ['belt', 'moss', 'Timing belt'], ['oil', 'pip', 'Engine oil and filter'], ['wipers', 'pip', 'Wiper blades']] as const) {
    household.must('item.add', { id, car, name, interval, place: id === 'oil' || id === 'wipers' ? 'home' : 'garage', history: 'never-done' });
  }
  household.must('session.keep', { sessions: [{ id: 'visit', day: '2026-12-16' as never, place: 'corner', tasks: ['fluid', 'pads', 'belt'].map((id) => ({ kind: 'item' as const, id })) }] });
  return household;
}

/** What is asked in most of these tests: wanted-1 and wanted-2 of Pip, wanted-3 of Moss; unwanted-1. */
export const ASKED = {
  session: 'visit', askedOn: '2026-11-25' as never,
  wanted: [
    { car: 'pip', task: { kind: 'item' as const, id: 'fluid' }, text: 'brake fluid' },
    { car: 'pip', task: { kind: 'item' as const, id: 'pads' }, text: 'pads looked at' },
    { car: 'moss', task: { kind: 'item' as const, id: 'belt' }, text: 'timing belt' },
  ],
  unwanted: [{ car: 'pip', text: 'no flush' }],
};

/** The visit after it was asked. */
export function withAsked(): MemoryHousehold {
  const household = withVisit();
  household.must('booking.ask', ASKED);
  return household;
}
