import { describe, expect, test } from 'vitest';
import { observations } from '../../../shared-core/records/observation.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

type Lines = NonNullable<RequestOf<'record.amend'>['lines']>;
type Line = Lines[number];
const pads: Line = { item: 'pads', name: 'Brake pads', work: 'check', outcome: 'watch', minutes: null, note: '4 mm' };
const lights: Line = { item: null, name: 'Lights', work: 'check', outcome: 'good', minutes: null, note: '' };

/** A record of 2026-11-10 with pads to be watched, looked at again on 2027-02-01. */
function withWatched(): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-03-01') });
  household.must('item.add', { id: 'pads', car: 'pip', name: 'Brake pads', work: 'check', interval: { repeat: { months: 12, distance: null } } });
  household.must('record.add', { id: 'w', car: 'pip', date: day('2026-11-10'), lines: [{ item: 'pads', outcome: 'watch', note: '4 mm', recheckOn: day('2027-02-01') }, { name: 'Lights', work: 'check', outcome: 'good' }] });
  return household;
}

const amend = (household: MemoryHousehold, lines: Lines, more: object = {}) => household.must('record.amend', { id: 'w', lines, why: 'read again', ...more });
const seen = (household: MemoryHousehold) => household.facts().all(observations);
const open = (household: MemoryHousehold) => seen(household).filter((one) => one.closedBy === null);

describe('amending a record with what is to be watched', () => {
  test.each([
    { case: 'to good', lines: [{ ...pads, outcome: 'good' as const }, lights] },
    { case: 'to acted', lines: [{ ...pads, outcome: 'acted' as const }, lights] },
    { case: 'to not done', lines: [{ ...pads, outcome: 'not-done' as const }, lights] },
    { case: 'so that the line is gone', lines: [lights] },
    { case: 'to good, with another note and in another place', lines: [lights, { ...pads, outcome: 'good' as const, note: '9 mm' }] },
  ])('$case closes what was seen by the amended record, and keeps it to be seen', ({ lines }) => {
    const household = withWatched();
    const before = household.entries.length;
    const { observations: changed } = amend(household, lines);
    expect(open(household)).toEqual([]);
    expect(seen(household)).toMatchObject([{ text: 'Brake pads: 4 mm', date: '2026-11-10', recheckOn: '2027-02-01', record: 'w', closedBy: 'w', closedOn: '2026-11-25' }]);
    expect(changed).toEqual(seen(household));
    expect(household.entries.slice(before).map((entry) => entry.kind)).toEqual(['work-amended', 'observation-noted']);
    expect(household.must('yard.show', {}).lanes[0]?.observations).toEqual([]);
  });

  test('still to be watched, it is carried: its words and day follow, its recheck stays', () => {
    const household = withWatched();
    const [first] = seen(household);
    amend(household, [lights, { ...pads, note: '3.5 mm' }], { date: day('2026-11-11') });
    expect(seen(household)).toEqual([{ ...first, text: 'Brake pads: 3.5 mm', date: '2026-11-11', line: 1 }]);
    amend(household, [{ ...pads, outcome: 'good' }]);
    expect(open(household)).toEqual([]);
  });

  test('what the keeper put otherwise stays: its own words and day, whatever becomes of the line', () => {
    const household = withWatched();
    const id = seen(household)[0]?.id ?? '';
    household.must('observation.amend', { id, date: day('2026-11-08') });
    amend(household, [lights, { ...pads, note: '3.5 mm' }], { date: day('2026-11-11') });
    expect(seen(household)).toMatchObject([{ id, text: 'Brake pads: 3.5 mm', date: '2026-11-08' }]);
    household.must('observation.amend', { id, text: 'Inner pad nearly through', severity: 'unsafe' });
    amend(household, [{ ...pads, note: '3 mm' }, lights], { date: day('2026-11-12') });
    expect(seen(household)).toMatchObject([{ id, text: 'Inner pad nearly through', severity: 'unsafe', date: '2026-11-08', closedBy: null }]);
    amend(household, [{ ...pads, outcome: 'acted' }, lights]);
    expect(seen(household)).toMatchObject([{ id, text: 'Inner pad nearly through', closedBy: 'w' }]);
  });

  test('of two lines in the same words each keeps its own observation', () => {
    const household = withWatched();
    const ofPads = seen(household)[0]?.id;
    const [left, right] = [{ ...lights, outcome: 'watch' as const, note: 'dim' }, { ...pads, name: 'Lights', note: 'dim' }];
    amend(household, [left, right]);
    expect(open(household).map((one) => one.text)).toEqual(['Lights: dim', 'Lights: dim']);
    amend(household, [right, { ...left, outcome: 'good' }]);
    expect(open(household).map((one) => [one.id, one.line])).toEqual([[ofPads, 0]]);
  });

  test('one noted before lines were named is known by its words', () => {
    const household = withWatched();
    const noted = household.entries.find((entry) => entry.kind === 'observation-noted');
    if (noted !== undefined) delete (noted.values as { line?: number }).line;
    amend(household, [{ ...pads, outcome: 'good' }, lights]);
    expect(open(household)).toEqual([]);
  });

  test('with nothing said of its lines, it stays as it is', () => {
    const household = withWatched();
    const before = household.entries.length;
    expect(household.must('record.amend', { id: 'w', note: 'wet day', why: 'forgotten' }).observations).toEqual([]);
    expect(household.entries).toHaveLength(before + 1);
    expect(open(household)).toHaveLength(1);
  });

  test('to be watched only now, it is noted, to be looked at again three months after the work', () => {
    const household = withWatched();
    amend(household, [pads, { ...lights, outcome: 'watch', note: 'one dim' }]);
    expect(open(household)).toMatchObject([{ text: 'Brake pads: 4 mm', recheckOn: '2027-02-01' }, { text: 'Lights: one dim', recheckOn: '2027-02-10', record: 'w' }]);
  });

  test('watched, good and watched again: each is to be seen', () => {
    const household = withWatched();
    amend(household, [{ ...pads, outcome: 'good' }]);
    amend(household, [{ ...pads, note: '2 mm' }]);
    expect(seen(household)).toMatchObject([{ text: 'Brake pads: 4 mm', closedBy: 'w' }, { text: 'Brake pads: 2 mm', closedBy: null }]);
  });

  test('what was seen beside the lines, and what another record closed, stays', () => {
    const household = withWatched();
    household.must('observation.note', { id: 'drip', car: 'pip', text: 'A drip', record: 'w' });
    household.must('record.add', { id: 'v', car: 'pip', lines: [{ item: 'pads', outcome: 'good' }] });
    household.must('observation.close', { observation: seen(household).find((one) => one.id !== 'drip')?.id ?? '', record: 'v' });
    amend(household, [{ ...pads, outcome: 'good' }]);
    expect(seen(household).map((one) => [one.text, one.closedBy])).toEqual(expect.arrayContaining([['A drip', null], ['Brake pads: 4 mm', 'v']]));
  });
});

test('an intake answered anew as not done closes what its record had to be watched', () => {
  const household = withWatched();
  household.must('intake.answer', { car: 'pip', item: 'pads', answer: 'said', date: day('2026-10-01') });
  const own = household.must('car.show', { car: 'pip' }).records.map(({ record }) => record).find((record) => record.id !== 'w');
  household.must('record.amend', { id: own?.id ?? '', lines: [pads], why: 'thin' });
  expect(open(household)).toHaveLength(2);
  household.must('intake.answer', { car: 'pip', item: 'pads', answer: 'unknown' });
  expect(open(household)).toMatchObject([{ record: 'w' }]);
});
