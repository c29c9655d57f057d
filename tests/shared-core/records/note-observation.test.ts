import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** Two cars with a record each, and something seen on the first. */
function withDrip(): MemoryHousehold {
  const household = memoryHousehold();
  for (const car of ['pip', 'wren']) {
    household.must('car.add', { id: car, name: car });
    household.must('record.add', { id: `${car}-work`, car, lines: [{ name: 'Looked over', work: 'check' }] });
  }
  household.must('observation.note', { id: 'drip', car: 'pip', text: 'A drip under the engine', recheckOn: day('2027-01-10') });
  return household;
}

describe('something seen', () => {
  test('is open until a record of its car closes it', () => {
    const household = withDrip();
    expect(household.must('yard.show', {}).lanes[0]?.observations).toEqual([{ id: 'drip', text: 'A drip under the engine', severity: 'watch', recheckOn: '2027-01-10' }]);
    expect(household.must('observation.close', { observation: 'drip', record: 'pip-work' }).observation).toMatchObject({ closedBy: 'pip-work', closedOn: '2026-11-25' });
    expect(household.must('yard.show', {}).lanes[0]?.observations).toEqual([]);
  });

  test.each([
    { case: 'seen tomorrow', name: 'observation.note', request: { car: 'pip', text: 'x', date: '2026-11-26' }, code: 'date-in-future' },
    { case: 'to be looked at before it was seen', name: 'observation.note', request: { car: 'pip', text: 'x', date: '2026-11-20', recheckOn: '2026-11-19' }, code: 'recheck-before-seen' },
    { case: 'of an unknown car', name: 'observation.note', request: { car: 'nobody', text: 'x' }, code: 'unknown-car' },
    { case: 'in an unknown record', name: 'observation.note', request: { car: 'pip', text: 'x', record: 'none' }, code: 'unknown-record' },
    { case: 'with an unknown paper', name: 'observation.note', request: { car: 'pip', text: 'x', papers: ['0'.repeat(64)] }, code: 'unknown-paper' },
    { case: 'of a taken id', name: 'observation.note', request: { id: 'drip', car: 'pip', text: 'x' }, code: 'id-taken' },
    { case: 'closed though never seen', name: 'observation.close', request: { observation: 'none', record: 'pip-work' }, code: 'unknown-observation' },
    { case: 'closed by the record of another car', name: 'observation.close', request: { observation: 'drip', record: 'wren-work' }, code: 'unknown-record' },
    { case: 'closed tomorrow', name: 'observation.close', request: { observation: 'drip', record: 'pip-work', on: '2026-11-26' }, code: 'date-in-future' },
  ] as const)('$case is refused: $code', ({ name, request, code }) => {
    const household = withDrip();
    const before = household.entries.length;
    expect(household.call(name, request as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(before);
  });

  test('is closed once', () => {
    const household = withDrip();
    household.must('observation.close', { observation: 'drip', record: 'pip-work' });
    expect(household.call('observation.close', { observation: 'drip', record: 'pip-work' })).toMatchObject({ ok: false, refusal: { code: 'observation-closed' } });
  });
});
