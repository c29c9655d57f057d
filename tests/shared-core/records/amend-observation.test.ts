import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

/** A brake line that is to be watched, noted a week ago; and another one that a record settled. */
function seen() {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip', power: 'petrol', firstRegistered: '2022-03-01' as never });
  household.must('observation.note', { id: 'line', car: 'pip', date: '2026-11-18' as never, text: 'Something seen', severity: 'watch', recheckOn: '2027-02-18' as never });
  household.must('observation.note', { id: 'early', car: 'pip', date: '2026-11-10' as never, text: 'A drip', recheckOn: '2026-11-18' as never });
  household.must('observation.note', { id: 'old', car: 'pip', text: 'Rust', date: '2026-11-18' as never });
  const { record } = household.must('record.add', { car: 'pip', lines: [{ name: 'Rust treated' }] });
  household.must('observation.close', { observation: 'old', record: record.id });
  return household;
}

describe('an observation', () => {
  test('is put into other words and made graver; the first words stay in the journal, and why beside the new ones', () => {
    const household = seen();
    const amended = household.must('observation.amend', { id: 'line', text: ' Brake line rusted through ', severity: 'unsafe', recheckOn: '2026-11-25' as never, why: 'seen by daylight' }).observation;
    expect(amended).toEqual({ id: 'line', car: 'pip', date: '2026-11-18', text: 'Brake line rusted through', severity: 'unsafe', recheckOn: '2026-11-25', record: null, papers: [], closedBy: null, closedOn: null });
    expect(household.must('car.show', { car: 'pip' }).observations.find((one) => one.id === 'line')).toEqual(amended);
    const told = household.entries.filter((entry) => (entry.values as { id?: string }).id === 'line');
    expect(told.map(({ kind, values }) => [kind, values['text'], values['why']])).toEqual([['observation-noted', 'Something seen', undefined], ['observation-amended', 'Brake line rusted through', 'seen by daylight']]);
  });

  test('keeps what is not named, and the same said again is no entry', () => {
    const household = seen();
    expect(household.must('observation.amend', { id: 'line', recheckOn: null }).observation).toMatchObject({ text: 'Something seen', severity: 'watch', recheckOn: null });
    const before = household.entries.length;
    household.must('observation.amend', { id: 'line', severity: 'watch', why: 'nothing' });
    expect(household.entries).toHaveLength(before);
  });

  test('is looked at again on the day it was seen at the soonest, and seen on the day of registration at the soonest', () => {
    const household = seen();
    expect(household.must('observation.amend', { id: 'line', recheckOn: '2026-11-18' as never }).observation.recheckOn).toBe('2026-11-18');
    expect(household.must('observation.amend', { id: 'line', date: '2022-03-01' as never }).observation.date).toBe('2022-03-01');
  });

  test('whose days do not fit from before is put into other words all the same', () => {
    const household = seen();
    const noted = household.entries.find((entry) => entry.values['id'] === 'early');
    (noted?.values as { recheckOn?: string }).recheckOn = '2026-11-09';
    expect(household.must('observation.amend', { id: 'early', text: 'A drop' }).observation.text).toBe('A drop');
  });

  test.each<{ request: RequestOf<'observation.amend'>; code: string; path: readonly string[] }>([
    { request: { id: 'none', text: 'x' }, code: 'unknown-observation', path: ['id'] },
    { request: { id: 'old', text: 'x' }, code: 'observation-closed', path: ['id'] },
    { request: { id: 'line', date: '2026-11-26' as never }, code: 'date-in-future', path: ['date'] },
    { request: { id: 'line', date: '2022-02-28' as never }, code: 'before-registration', path: ['date'] },
    { request: { id: 'line', recheckOn: '2026-11-17' as never }, code: 'recheck-before-seen', path: ['recheckOn'] },
    { request: { id: 'line', date: '2026-11-20' as never, recheckOn: '2026-11-19' as never }, code: 'recheck-before-seen', path: ['recheckOn'] },
    { request: { id: 'early', date: '2026-11-20' as never }, code: 'recheck-before-seen', path: ['date'] },
    { request: { id: 'line', text: ' ' }, code: 'text-empty', path: ['text'] },
  ])('is not amended: $code', ({ request, code, path }) => {
    expect(seen().call('observation.amend', request)).toMatchObject({ ok: false, refusal: { code, path } });
  });
});
