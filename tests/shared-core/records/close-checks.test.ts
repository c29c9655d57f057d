import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { readings } from '../../../shared-core/fleet/reading.ts';
import { newEntry, type Entry } from '../../../shared-core/journal/entry-kind.ts';
import { paperNotes } from '../../../shared-core/records/paper-note.ts';
import { paperTies } from '../../../shared-core/records/paper-tie.ts';
import { paperKept } from '../../../shared-core/records/paper.ts';
import { observations } from '../../../shared-core/records/observation.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { begunHousehold, SESSION_DAY } from '../work/doing-household.ts';

type Close = RequestOf<'session.close'>;
type CloseCar = Close['cars'][number];

const pip = (more: Partial<CloseCar> = {}): CloseCar => ({ car: 'pip', lines: [{ item: 'oil' }], ...more });
const close = (household: MemoryHousehold, session: string, ...cars: readonly CloseCar[]) => household.call('session.close', { session, cars: [...cars] });
const refused = (code: string, path: readonly (string | number)[]) => ({ ok: false, refusal: { code, path } });
const pad = (household: MemoryHousehold, session: string) => household.must('work.read', { session, at: { task: 'item/brakes', step: 'step-1' }, read: { kind: 'measured', what: 'pad', name: null, place: 'front-left', typed: { value: 5.5, unit: 'mm' } } }).value.id;

/** The household with a second car whose oil is in the same session. */
function withWren() {
  const { household } = begunHousehold(['oil']);
  household.must('car.add', { id: 'wren', name: 'Wren', power: 'petrol', year: 2000, use: 'hobby' });
  household.must('item.add', { id: 'wren-oil', car: 'wren', name: 'Engine oil', interval: { repeat: { months: 12, distance: null } } });
  household.must('session.keep', { sessions: [{ day: SESSION_DAY as never, place: 'home', tasks: [{ kind: 'item', id: 'wren-oil' }] }] });
  return { household, session: household.must('sessions.show', {}).sessions[0]?.id ?? '' };
}

/** The household with a test of the car in the same session. */
function withDuty(tasks: readonly string[] = ['oil']) {
  const { household } = begunHousehold(tasks);
  household.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: '2026-12-20' as never, months: 12, keepsDate: true });
  household.must('session.keep', { sessions: [{ day: SESSION_DAY as never, place: 'home', tasks: [{ kind: 'obligation', id: 'test' }] }] });
  return { household, session: household.must('sessions.show', {}).sessions[0]?.id ?? '' };
}

/** Photographs at the work on the car, each a paper that is kept. */
function photograph(household: MemoryHousehold, session: string, count: number) {
  let last: ReturnType<MemoryHousehold['call']> | null = null;
  for (let at = 0; at < count; at += 1) {
    const id = at.toString(16).padStart(64, '0');
    keepPaper(household, id);
    last = household.call('work.photo', { session, car: 'pip', paper: id });
  }
  return last;
}

function keepPaper(household: MemoryHousehold, id: string): void {
  const kept = newEntry(paperKept, { id, name: `${id.slice(-4)}.jpg`, media: 'image/jpeg', bytes: 100 });
  (household.entries as Entry[]).push({ ...kept, seq: household.entries.length, at: `${SESSION_DAY}T09:00:00.000Z` });
}

describe('what was worked on is told', () => {
  test('a car with work that is not told is refused, and its find is not lost', () => {
    const { household, session } = withWren();
    household.must('work.tick', { session, of: [{ task: 'item/wren-oil', step: 'whole' }] });
    expect(close(household, session, pip())).toMatchObject(refused('car-not-told', ['cars']));
    const { observation } = household.must('work.find', { session, at: { task: 'item/wren-oil', step: 'whole' }, severity: 'soon' });
    const closed = close(household, session, pip(), { car: 'wren', lines: [{ item: 'wren-oil' }] });
    expect(closed).toMatchObject({ ok: true, value: { records: [{}, {}] } });
    expect(household.facts().get(observations, observation.id)?.record).not.toBeNull();
  });

  test('a car whose last task has left the session needs no telling, whatever was found on it', () => {
    const { household, session } = withWren();
    household.must('work.begin', { session });
    household.must('work.find', { session, at: { task: 'item/wren-oil', step: 'whole' }, severity: 'watch' });
    household.must('session.release', { session, tasks: [{ kind: 'item', id: 'wren-oil' }], sure: true });
    expect(close(household, session, pip())).toMatchObject({ ok: true });
  });

  test('a task of which steps were done is told too; a step left out is no work', () => {
    const { household, session } = begunHousehold(['oil', 'brakes']);
    household.must('work.tick', { session, of: [{ task: 'item/brakes', step: 'step-1' }], as: 'left-out', note: 'dark' });
    household.must('work.tick', { session, of: [{ task: 'item/brakes', step: 'step-2' }] });
    expect(close(household, session, pip())).toMatchObject(refused('task-not-told', ['cars', 0, 'lines']));
    household.must('work.untick', { session, of: [{ task: 'item/brakes', step: 'step-2' }] });
    expect(close(household, session, pip())).toMatchObject({ ok: true, value: { left: [{ id: 'brakes' }] } });
  });

  test('nothing twice: an obligation, or a value that was read', () => {
    const { household, session } = withDuty(['brakes']);
    const value = pad(household, session);
    const brakes: Partial<CloseCar> = { lines: [{ item: 'brakes', outcome: 'good' }] };
    expect(close(household, session, pip({ ...brakes, met: [{ obligation: 'test' }, { obligation: 'test' }] }))).toMatchObject(refused('met-twice', ['cars', 0, 'met', 1]));
    expect(close(household, session, pip({ ...brakes, measured: [{ value }, { value }] }))).toMatchObject(refused('value-twice', ['cars', 0, 'measured', 1]));
  });

  test('an obligation of one car is not met by another', () => {
    const { household, session } = withWren();
    household.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: '2026-12-20' as never, months: 12 });
    household.must('session.keep', { sessions: [{ day: SESSION_DAY as never, place: 'home', tasks: [{ kind: 'obligation', id: 'test' }] }] });
    expect(close(household, session, pip(), { car: 'wren', lines: [{ item: 'wren-oil' }], met: [{ obligation: 'test' }] })).toMatchObject(refused('task-not-in-session', ['cars', 1, 'met']));
  });

  test('what is recorded meanwhile is written a second time only by who is sure, and is not left for another day', () => {
    const { household, session } = begunHousehold(['oil', 'brakes']);
    household.must('record.add', { car: 'pip', lines: [{ item: 'oil' }] });
    expect(close(household, session, pip())).toMatchObject({ ok: false, refusal: { code: 'task-recorded', path: ['cars', 0, 'lines', 0], values: { on: SESSION_DAY } } });
    const before = household.entries.length;
    expect(household.must('session.close', { session, cars: [{ car: 'pip', lines: [{ item: 'brakes', outcome: 'good' }] }] }).left).toEqual([]);
    expect(household.entries.length).toBeGreaterThan(before);
  });

  test('where all of it is recorded meanwhile, the session is closed with what else was said', () => {
    const { household, session } = begunHousehold(['oil']);
    household.must('record.add', { car: 'pip', lines: [{ item: 'oil' }] });
    expect(household.must('session.close', { session, cars: [{ car: 'pip', note: 'Drain plug 30 N·m' }] })).toMatchObject({ records: [], left: [], session: { state: 'done', note: 'Pip: Drain plug 30 N·m' } });
  });
});

describe('where no task was done on a car, what was typed is kept all the same', () => {
  test('with an obligation met: the reading by itself, reference and papers with the renewal, words with the session', () => {
    const { household, session } = withDuty();
    keepPaper(household, 'c'.repeat(64));
    const closed = household.must('session.close', { session, cars: [pip({
      lines: [{ item: 'oil', outcome: 'not-done', note: 'no drain plug' }], met: [{ obligation: 'test' }], reading: { value: 45_500, unit: 'km' }, reference: 'sheet 12', papers: ['c'.repeat(64)], note: 'friendly people',
    })] });
    expect(closed.renewals).toMatchObject([{ reference: 'sheet 12', papers: ['c'.repeat(64)] }]);
    expect(closed.session.note).toBe('Pip: friendly people\nPip: Engine oil and filter: no drain plug');
    expect(household.facts().ofCar(readings, 'pip').find((one) => one.typed.value === 45_500)).toMatchObject({ date: SESSION_DAY, standing: 'accepted' });
    expect([closed.records, closed.left]).toEqual([[], [{ kind: 'item', id: 'oil' }]]);
  });

  test('what can stand nowhere is refused at its field: costs, who did it, words that are too long', () => {
    const { household, session } = withDuty();
    const only = (more: Partial<CloseCar>) => close(household, session, pip({ lines: [{ item: 'oil', outcome: 'not-done' }], met: [{ obligation: 'test' }], ...more }));
    expect(only({ costs: [{ kind: 'fee', text: 'test', amountMinor: 6000 }] })).toMatchObject(refused('nothing-done-on-car', ['cars', 0, 'costs']));
    expect(only({ doneBy: 'the keeper' })).toMatchObject(refused('nothing-done-on-car', ['cars', 0, 'doneBy']));
    expect(only({ note: 'x'.repeat(600) })).toMatchObject(refused('closing-note-too-long', ['cars', 0, 'note']));
    expect(close(household, session, pip({ lines: [], reference: 'sheet 12' }))).toMatchObject(refused('nothing-done-on-car', ['cars', 0, 'reference']));
  });

  test('what was measured is kept, with the reading of the day', () => {
    const { household, session } = begunHousehold(['brakes']);
    const value = pad(household, session);
    const closed = household.must('session.close', { session, cars: [{ car: 'pip', lines: [{ item: 'brakes', outcome: 'not-done' }], measured: [{ value }], reading: { value: 45_400, unit: 'km' } }] });
    expect(closed).toMatchObject({ records: [], measurements: [{ value: 5.5, date: SESSION_DAY }], left: [{ id: 'brakes' }] });
    expect(closed.measurements[0]?.reading).not.toBeNull();
  });
});

describe('each thing is as sound as entered by itself', () => {
  test.each<[string, RequestOf<'session.close'>['cars'][number]['followUps'], readonly (string | number)[]]>([
    ['follow-up-without-when', [{ text: 'x' }], ['cars', 0, 'followUps', 0, 'days']],
    ['follow-up-no-distance', [{ text: 'x', distance: { value: 0, unit: 'km' } }], ['cars', 0, 'followUps', 0, 'distance', 'value']],
    ['unknown-item', [{ text: 'x', days: 1 }, { text: 'x', days: 1, item: 'none' }], ['cars', 0, 'followUps', 1, 'item']],
    ['unknown-item', [{ text: 'x', days: 1, item: 'wren-oil' }], ['cars', 0, 'followUps', 0, 'item']],
  ])('a follow-up: %s', (code, followUps, path) => {
    const { household, session } = withWren();
    expect(close(household, session, pip({ followUps }))).toMatchObject(refused(code, path));
  });

  test('as many follow-ups as its own proposal has', () => {
    const { household, session } = begunHousehold(['oil']);
    expect(close(household, session, pip({ followUps: Array.from({ length: 50 }, (_, at) => ({ text: `look ${at}`, days: at })) }))).toMatchObject({ ok: true });
  });

  test('no more photographs than a record holds, and none beyond them with other papers', () => {
    const { household, session } = begunHousehold(['oil']);
    expect(photograph(household, session, 40)).toMatchObject({ ok: true });
    expect(photograph(household, session, 41)).toMatchObject(refused('photos-too-many', ['paper']));
    keepPaper(household, 'd'.repeat(64));
    expect(close(household, session, pip({ papers: ['d'.repeat(64)] }))).toMatchObject({ ok: false, refusal: { code: 'papers-too-many', values: { most: 40, over: 1 }, path: ['cars', 0, 'papers'] } });
    expect(close(household, session, pip())).toMatchObject({ ok: true });
  });

  test('a find at a check is one observation, not two', () => {
    const { household, session } = begunHousehold(['brakes']);
    household.must('work.find', { session, at: { task: 'item/brakes', step: 'step-2' }, severity: 'watch', text: 'hose chafed' });
    const closed = household.must('session.close', { session, cars: [{ car: 'pip', lines: [{ item: 'brakes', outcome: 'watch' }] }] });
    expect(household.facts().all(observations)).toMatchObject([{ text: 'hose chafed', record: closed.records[0]?.record.id }]);
  });

  test('what was read on one day and closed on another is a measurement of the day on which it was read', () => {
    const { household, session } = begunHousehold(['brakes']);
    const value = pad(household, session);
    household.on('2026-12-12');
    const closed = household.must('session.close', { session, date: '2026-12-12' as never, cars: [{ car: 'pip', lines: [{ item: 'brakes', outcome: 'good' }], measured: [{ value }], reading: { value: 45_900, unit: 'km' } }] });
    expect(closed.measurements).toMatchObject([{ date: SESSION_DAY, reading: null }]);
  });

  test('nothing is used before it came', () => {
    const { household, session } = begunHousehold(['oil']);
    household.on('2026-12-07').must('lot.set', { id: 'lot-2', part: 'can', quantity: 5, receivedOn: '2026-12-06' as never });
    const lotsUsed = [{ lot: 'lot-2', quantity: 4 }];
    expect(household.call('session.close', { session, date: SESSION_DAY as never, cars: [pip({ lotsUsed })] })).toMatchObject(refused('lot-not-there-yet', ['cars', 0, 'lotsUsed']));
    expect(household.call('record.add', { car: 'pip', date: SESSION_DAY as never, lines: [{ item: 'oil' }], lotsUsed })).toMatchObject(refused('lot-not-there-yet', ['lotsUsed']));
    expect(household.call('session.close', { session, date: '2026-12-06' as never, cars: [pip({ lotsUsed })] })).toMatchObject({ ok: true });
  });

  test('a find is looked at again on no day that has passed, and a step is one that the task has', () => {
    const { household, session } = begunHousehold(['oil', 'polish']);
    const at = { task: 'item/oil', step: 'step-1' };
    expect(household.call('work.find', { session, at, severity: 'watch', recheckOn: '2026-12-04' as never })).toMatchObject(refused('recheck-before-record', ['recheckOn']));
    for (const step of ['nonsense', 'whole', 'check: No leak', 'open: wheels']) expect(household.call('work.tick', { session, of: [{ task: 'item/oil', step }] })).toMatchObject(refused('unknown-step', ['of', 0, 'step']));
    expect(household.call('work.read', { session, at: { task: 'item/oil', step: 'nonsense' }, read: { kind: 'torque', name: 'plug', typed: { value: 30, unit: 'Nm' } } })).toMatchObject(refused('unknown-step', ['at', 'step']));
    for (const step of household.must('work.show', { session }).steps) expect(household.call('work.tick', { session, of: step.of })).toMatchObject({ ok: true });
  });
});

// Source: our own rule, after DESIGN.md section 5: nothing confirmed is ever lost.
describe('photographs of a car with nothing done', () => {
  function photographed() {
    const { household, session } = withWren();
    household.must('work.begin', { session });
    const paper = 'd'.repeat(64);
    keepPaper(household, paper);
    household.must('work.photo', { session, car: 'wren', paper });
    const wren = (photos?: 'keep' | 'set-aside') => close(household, session, pip(), { car: 'wren', lines: [{ item: 'wren-oil', outcome: 'not-done' }], ...(photos === undefined ? {} : { photos }) });
    return { household, paper, wren };
  }

  test('are asked about, by how many and of which car', () => {
    const { wren } = photographed();
    expect(wren()).toEqual({ ok: false, refusal: { code: 'photos-without-record', path: ['cars', 1, 'photos'], values: { n: 1, car: 'Wren' } } });
  });

  test('are kept among the papers of the car', () => {
    const { household, paper, wren } = photographed();
    expect(wren('keep')).toMatchObject({ ok: true });
    expect(household.facts().all(paperTies)).toMatchObject([{ paper, kind: 'car', to: 'wren' }]);
  });

  test('are set aside', () => {
    const { household, paper, wren } = photographed();
    expect(wren('set-aside')).toMatchObject({ ok: true });
    expect([household.facts().all(paperTies), household.facts().get(paperNotes, paper)?.setAside]).toEqual([[], true]);
  });
});
