import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import type { Entry } from '../../../shared-core/journal/entry-kind.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import { composeFollowUp, followUps } from '../../../shared-core/work/follow-up.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

function withPip(): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip', power: 'petrol', firstRegistered: '2020-05-01' });
  household.must('car.add', { id: 'ember', name: 'Ember', power: 'electric' });
  household.must('item.add', { id: 'oil', car: 'pip', name: 'Engine oil and filter', interval: { repeat: { months: 12, distance: null } } });
  household.must('item.add', { id: 'tyres', car: 'ember', name: 'Tyres', interval: { repeat: { months: 12, distance: null } } });
  return household;
}

/** As version 1 wrote it. Frozen: it is never brought up to date, for that is what the program must do. */
const VERSION_1 = { id: 'again', car: 'pip', item: 'oil', session: null, text: 'Level when warm', madeOn: '2026-11-20', dueOn: '2026-11-21', after: { value: 50, unit: 'mi' }, doneOn: null, note: 'a note' };

describe('a follow-up', () => {
  test('is what a rule of a sheet says, from the day of the work on', () => {
    const of = { id: 'again', car: 'pip', item: 'oil', session: 'one', madeOn: day('2028-02-28') };
    expect(composeFollowUp({ text: 'Level', days: 2, distance: null }, of)).toEqual({ ...of, text: 'Level', dueOn: '2028-03-01', after: null, doneOn: null, note: '' });
    expect(composeFollowUp({ text: 'Wheels', days: null, distance: { value: 50, unit: 'km' } }, of)).toMatchObject({ dueOn: null, after: { value: 50, unit: 'km' } });
    expect(composeFollowUp({ text: 'Both', days: 0, distance: { value: 0, unit: 'km' } }, of)).toMatchObject({ dueOn: '2028-02-28', after: { value: 0, unit: 'km' } });
  });

  test('is added by days, by a day or by distance, from today or from an earlier day', () => {
    const household = withPip();
    expect(household.must('follow-up.add', { id: 'a', car: 'Pip', text: ' Level when warm ', days: 1, item: 'oil' }).followUp).toEqual({
      id: 'a', car: 'pip', item: 'oil', session: null, text: 'Level when warm', madeOn: '2026-11-25', dueOn: '2026-11-26', after: null, doneOn: null, note: '',
    });
    expect(household.must('follow-up.add', { car: 'pip', text: 'Missed one screw', dueOn: '2026-12-05', madeOn: '2026-11-20' }).followUp).toMatchObject({ madeOn: '2026-11-20', dueOn: '2026-12-05' });
    expect(household.must('follow-up.add', { car: 'ember', text: 'Wheel bolts', after: { value: 50, unit: 'mi' } }).followUp).toMatchObject({ dueOn: null, after: { value: 50, unit: 'mi' } });
    expect(household.must('follow-up.add', { car: 'pip', text: 'Belt tension, on that very day', days: 0 }).followUp.dueOn).toBe('2026-11-25');
    expect(household.facts().ofCar(followUps, 'pip').length).toBe(3);
  });

  test('is ticked with its day and a note below the first, and not twice', () => {
    const household = withPip();
    household.must('follow-up.add', { id: 'a', car: 'pip', text: 'Look for leaks', days: 3, madeOn: '2026-11-20', note: 'left side' });
    expect(household.must('follow-up.done', { followUp: 'a', on: '2026-11-24', note: 'dry' }).followUp).toMatchObject({ doneOn: '2026-11-24', note: 'left side\ndry' });
    expect(household.call('follow-up.done', { followUp: 'a' })).toMatchObject({ ok: false, refusal: { code: 'follow-up-done', values: { on: '2026-11-24' } } });
    household.must('follow-up.add', { id: 'b', car: 'pip', text: 'Look for leaks', days: 3, madeOn: '2026-11-20' });
    expect(household.must('follow-up.done', { followUp: 'b' }).followUp).toMatchObject({ doneOn: '2026-11-25', note: '' });
  });

  test('is ticked no earlier than it was made and not in the future', () => {
    const household = withPip();
    household.must('follow-up.add', { id: 'a', car: 'pip', text: 'Look for leaks', days: 3, madeOn: '2026-11-20' });
    expect(household.call('follow-up.done', { followUp: 'a', on: '2026-11-19' })).toMatchObject({ ok: false, refusal: { code: 'follow-up-before-work', path: ['on'] } });
    expect(household.call('follow-up.done', { followUp: 'a', on: '2026-11-26' })).toMatchObject({ ok: false, refusal: { code: 'date-in-future' } });
    expect(household.must('follow-up.done', { followUp: 'a', on: '2026-11-20' }).followUp.doneOn).toBe('2026-11-20');
  });

  test('is dropped, ticked or not, and then is not there', () => {
    const household = withPip();
    household.must('follow-up.add', { id: 'a', car: 'pip', text: 'A slip', days: 3 });
    expect(household.must('follow-up.drop', { followUp: 'a' }).followUp.text).toBe('A slip');
    expect(household.facts().all(followUps)).toEqual([]);
    for (const name of ['follow-up.drop', 'follow-up.done'] as const) expect(household.call(name, { followUp: 'a' })).toMatchObject({ ok: false, refusal: { code: 'unknown-follow-up' } });
  });

  test('is put off to a day or by a distance from today, and what it was stays with it', () => {
    const household = withPip();
    household.must('follow-up.add', { id: 'a', car: 'pip', text: 'Look for leaks', days: 3, madeOn: '2026-11-20', after: { value: 50, unit: 'km' } });
    const first = { on: '2026-11-25', dueOn: '2026-11-23', after: { value: 50, unit: 'km' }, countedFrom: '2026-11-20', note: 'raining' };
    expect(household.must('follow-up.put-off', { followUp: 'a', dueOn: '2026-12-05', note: ' raining ' }).followUp).toMatchObject({ madeOn: '2026-11-20', dueOn: '2026-12-05', after: null, countedFrom: '2026-11-25', putOff: [first] });
    const again = household.on('2026-12-05').must('follow-up.put-off', { followUp: 'a', after: { value: 100, unit: 'mi' } }).followUp;
    expect(again).toMatchObject({ dueOn: null, after: { value: 100, unit: 'mi' }, countedFrom: '2026-12-05', putOff: [first, { on: '2026-12-05', dueOn: '2026-12-05', after: null, countedFrom: '2026-11-25', note: '' }] });
    // It can be ticked for any day since it was made, put off or not.
    expect(household.must('follow-up.done', { followUp: 'a', on: '2026-11-21' }).followUp).toMatchObject({ doneOn: '2026-11-21', putOff: again.putOff });
    expect(household.call('follow-up.put-off', { followUp: 'a', dueOn: '2026-12-20' })).toMatchObject({ ok: false, refusal: { code: 'follow-up-done' } });
  });

  test.each<{ request: Partial<RequestOf<'follow-up.put-off'>>; code: string; path: readonly string[] }>([
    { request: {}, code: 'follow-up-put-off-to-nothing', path: ['dueOn'] },
    { request: { dueOn: '2026-11-25' }, code: 'follow-up-put-off-back', path: ['dueOn'] },
    { request: { dueOn: '2026-11-28' }, code: 'follow-up-not-later', path: ['dueOn'] },
    { request: { after: { value: 0, unit: 'km' } }, code: 'follow-up-no-distance', path: ['after', 'value'] },
    { request: { followUp: 'none', dueOn: '2026-12-28' }, code: 'unknown-follow-up', path: ['followUp'] },
  ])('is not put off: $code', ({ request, code, path }) => {
    const household = withPip();
    household.must('follow-up.add', { id: 'a', car: 'pip', text: 'Look for leaks', days: 3 });
    expect(household.call('follow-up.put-off', { followUp: 'a', ...request })).toMatchObject({ ok: false, refusal: { code, path } });
    expect(household.must('follow-up.put-off', { followUp: 'a', dueOn: '2026-11-29' }).followUp.dueOn).toBe('2026-11-29');
  });

  test('is not put off to a nearer distance than it has, by what the car has gone since', () => {
    const household = withPip();
    for (const [value, on] of [[50_000, '2026-11-20'], [50_400, '2026-11-25']] as const) household.must('reading.record', { car: 'pip', value, unit: 'km', date: on });
    household.must('follow-up.add', { id: 'a', car: 'pip', text: 'Wheel bolts', madeOn: '2026-11-20', after: { value: 1000, unit: 'km' } });
    const putOff = (value: number, more: object = {}) => household.call('follow-up.put-off', { followUp: 'a', after: { value, unit: 'km' }, ...more });
    // By hand: it stands at 51 000 km; 400 of the 1000 are gone, and 600 from today lead to the same 51 000.
    const nearer = { ok: false, refusal: { code: 'follow-up-not-further', values: { value: 600, unit: 'km', now: 1000, nowUnit: 'km', since: '2026-11-20' }, path: ['after', 'value'] } };
    expect(putOff(600)).toMatchObject(nearer);
    expect(putOff(599, { dueOn: '2026-12-20' })).toMatchObject({ ok: false, refusal: { code: 'follow-up-not-further' } });
    expect(putOff(0, { after: { value: 372, unit: 'mi' } })).toMatchObject({ ok: false, refusal: { code: 'follow-up-not-further', values: { unit: 'mi' } } });
    expect(putOff(601)).toMatchObject({ ok: true, value: { followUp: { after: { value: 601, unit: 'km' }, countedFrom: '2026-11-25' } } });
    // Put off on the same day once more it needs no reading to tell.
    expect(putOff(601)).toMatchObject({ ok: false, refusal: { code: 'follow-up-not-further' } });
  });

  test('whose distance is passed is put off by any distance; where no reading tells, it is the keeper who knows', () => {
    const household = withPip();
    household.must('follow-up.add', { id: 'b', car: 'ember', text: 'Wheel bolts', madeOn: '2026-11-20', after: { value: 1000, unit: 'km' } });
    household.must('follow-up.put-off', { followUp: 'b', after: { value: 10, unit: 'km' } });
    for (const [value, on] of [[50_000, '2026-11-20'], [51_200, '2026-11-25']] as const) household.must('reading.record', { car: 'pip', value, unit: 'km', date: on });
    household.must('follow-up.add', { id: 'a', car: 'pip', text: 'Wheel bolts', madeOn: '2026-11-20', after: { value: 1000, unit: 'km' } });
    expect(household.must('follow-up.put-off', { followUp: 'a', after: { value: 10, unit: 'km' } }).followUp.after).toEqual({ value: 10, unit: 'km' });
  });

  test('of a session that was laid anew since is ticked without it', () => {
    const household = withPip();
    const [session] = household.must('session.propose', { sessions: [{ day: '2026-11-28', place: 'home', tasks: [{ kind: 'item', id: 'oil' }] }] }).sessions;
    household.must('follow-up.add', { id: 'a', car: 'pip', text: 'Look for leaks', days: 3, session: session?.id ?? '' });
    household.must('session.propose', { sessions: [{ day: '2026-11-29', place: 'home', tasks: [{ kind: 'item', id: 'tyres' }] }] });
    expect(household.must('follow-up.done', { followUp: 'a' }).followUp).toMatchObject({ session: null, doneOn: '2026-11-25' });
  });

  test.each<{ case: string; request: Partial<RequestOf<'follow-up.add'>>; code: string }>([
    { case: 'neither day nor distance', request: { days: null }, code: 'follow-up-without-when' },
    { case: 'days and a day', request: { dueOn: '2026-12-01' }, code: 'follow-up-two-days' },
    { case: 'a day before the work', request: { days: null, dueOn: '2026-11-24' }, code: 'follow-up-before-work' },
    { case: 'no distance to go', request: { after: { value: 0, unit: 'km' } }, code: 'follow-up-no-distance' },
    { case: 'a negative distance', request: { after: { value: -1, unit: 'km' } }, code: 'not-a-distance' },
    { case: 'a distance in yards', request: { after: { value: 1, unit: 'yd' as 'km' } }, code: 'unknown-unit' },
    { case: 'days before the work', request: { days: -1 }, code: 'not-understood' },
    { case: 'made in the future', request: { madeOn: '2026-11-26' }, code: 'date-in-future' },
    { case: 'made before the car was', request: { madeOn: '2020-04-30' }, code: 'before-registration' },
    { case: 'a day there is not', request: { days: null, dueOn: '2026-02-30' }, code: 'not-a-date' },
    { case: 'an unknown car', request: { car: 'none' }, code: 'unknown-car' },
    { case: 'an item of another car', request: { item: 'tyres' }, code: 'unknown-item' },
    { case: 'an unknown session', request: { session: 'none' }, code: 'unknown-session' },
    { case: 'no words', request: { text: ' ' }, code: 'text-empty' },
    { case: 'words in two lines', request: { text: 'a\nb' }, code: 'control-characters' },
    { case: 'an id in use', request: { id: 'there' }, code: 'id-taken' },
  ])('with $case is refused', ({ request, code }) => {
    const household = withPip();
    household.must('follow-up.add', { id: 'there', car: 'pip', text: 'Stands', days: 1 });
    expect(household.call('follow-up.add', { car: 'pip', text: 'Look again', days: 1, ...request })).toMatchObject({ ok: false, refusal: { code } });
  });

  test('of version 1 is read as it was written', () => {
    const entry: Entry = { kind: 'follow-up-set', version: 1, subject: 'car/pip', values: VERSION_1, seq: 0, at: '2026-11-20T12:00:00.000Z' };
    expect(memoryFacts(entryKinds, [entry]).get(followUps, 'again')).toEqual(VERSION_1);
  });
});
