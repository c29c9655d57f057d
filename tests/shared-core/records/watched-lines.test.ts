import { describe, expect, test } from 'vitest';
import { observations } from '../../../shared-core/records/observation.ts';
import { workRecords } from '../../../shared-core/records/work-record.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

function withPip(): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-03-01') });
  household.must('item.add', { id: 'pads', car: 'pip', name: 'Brake pads and discs', work: 'check', interval: { repeat: { months: 12, distance: null } } });
  return household;
}

type Line = RequestOf<'record.add'>['lines'][number];
const add = (household: MemoryHousehold, date: string, ...lines: Line[]) => household.must('record.add', { car: 'pip', date: day(date), lines });

describe('a line to be watched', () => {
  test('is noted as an observation beside its record, in the same step', () => {
    const household = withPip();
    const before = household.entries.length;
    const { record, observations: noted } = add(household, '2026-11-20', { item: 'pads', outcome: 'watch', note: '4 mm left,\neven wear', recheckOn: day('2027-02-01') }, { name: 'Lights', work: 'check', outcome: 'good' });
    expect(noted).toEqual([{ id: 'new-2', car: 'pip', date: '2026-11-20', text: 'Brake pads and discs: 4 mm left, even wear', severity: 'watch', recheckOn: '2027-02-01', record: record.id, line: 0, papers: [], closedBy: null, closedOn: null }]);
    expect(household.entries.slice(before).map((entry) => entry.kind)).toEqual(['work-recorded', 'observation-noted']);
    expect(household.facts().all(observations)).toEqual(noted);
  });

  test('leaves the record as it always was', () => {
    const household = withPip();
    const { record } = add(household, '2026-11-20', { item: 'pads', outcome: 'watch', recheckOn: day('2027-02-01') });
    expect(household.facts().get(workRecords, record.id)?.lines).toEqual([{ item: 'pads', name: 'Brake pads and discs', work: 'check', outcome: 'watch', minutes: null, note: '' }]);
  });

  // Three months: ours, no source.
  test.each([
    { case: 'without a day: three months on', date: '2026-11-20', recheckOn: undefined, on: ['2027-02-20'] },
    { case: 'without a day, entered late: today', date: '2025-01-10', recheckOn: undefined, on: ['2026-11-25'] },
    { case: 'with a day', date: '2026-11-20', recheckOn: '2026-12-24', on: ['2026-12-24'] },
    { case: 'on the day of the work', date: '2026-11-20', recheckOn: '2026-11-20', on: ['2026-11-20'] },
    { case: 'with none wanted', date: '2026-11-20', recheckOn: null, on: [] },
  ])('$case', ({ date, recheckOn, on }) => {
    const line: Line = { item: 'pads', outcome: 'watch', ...(recheckOn === undefined ? {} : { recheckOn: recheckOn === null ? null : day(recheckOn) }) };
    expect(add(withPip(), date, line).observations.map((seen) => seen.recheckOn)).toEqual(on);
  });

  test('each such line makes its own; the others make none', () => {
    const { observations: noted } = add(withPip(), '2026-11-20', { name: 'Tyres', work: 'check', outcome: 'watch' }, { item: 'pads', outcome: 'good' }, { name: 'Wipers', work: 'check', outcome: 'watch', recheckOn: day('2027-01-01') }, { name: 'Horn', work: 'check', outcome: 'not-done' });
    expect(noted.map((seen) => [seen.text, seen.recheckOn])).toEqual([['Tyres', '2027-02-20'], ['Wipers', '2027-01-01']]);
  });

  test('a long note is cut between characters', () => {
    const [seen] = add(withPip(), '2026-11-20', { name: 'Tyres', work: 'check', outcome: 'watch', note: `${'x'.repeat(292)}😀😀` }).observations;
    expect(seen?.text).toBe(`Tyres: ${'x'.repeat(292)}`);
  });

  test.each([
    { case: 'a day to look again at what is good', line: { item: 'pads', outcome: 'good', recheckOn: '2027-01-01' }, code: 'recheck-without-watch' },
    { case: 'a day before the work', line: { item: 'pads', outcome: 'watch', recheckOn: '2026-11-19' }, code: 'recheck-before-record' },
    { case: 'a day that does not exist', line: { item: 'pads', outcome: 'watch', recheckOn: '2027-02-29' }, code: 'not-a-date' },
  ])('$case is refused: $code', ({ line, code }) => {
    const household = withPip();
    const before = household.entries.length;
    expect(household.call('record.add', { car: 'pip', date: day('2026-11-20'), lines: [line] } as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(before);
  });
});
