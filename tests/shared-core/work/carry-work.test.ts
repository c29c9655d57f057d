import { describe, expect, test } from 'vitest';
import { ticksOf } from '../../../shared-core/work/tick-step.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { begunHousehold, SESSION_DAY } from './doing-household.ts';

// Source: own rules, after DESIGN.md section 5: nothing confirmed is ever lost.
const LATER = '2026-12-12';
const PAPER = 'a'.repeat(64);
const item = (id: string) => ({ kind: 'item' as const, id });
const at = (task: string, step: string) => ({ task: `item/${task}`, step });
const pad = (value: number) => ({ kind: 'measured' as const, what: 'pad' as const, name: null, place: 'front-left' as const, typed: { value, unit: 'mm' as const } });

/** The oil and the brakes begun, ticked, timed, measured, photographed and found on; a polish kept a week later at the same place. */
function inHand() {
  const { household, session } = begunHousehold(['oil', 'brakes']);
  const [other] = household.must('session.keep', { sessions: [{ day: LATER as never, place: 'home', tasks: [item('polish')] }] }).sessions;
  household.at('09:00:00').must('work.time', { session, task: 'item/oil', run: true });
  household.at('09:05:00').must('work.tick', { session, of: [at('oil', 'step-1')] });
  household.must('work.tick', { session, of: [at('oil', 'step-3')], as: 'left-out', note: 'no oil' });
  household.at('09:10:00').must('work.time', { session, task: 'item/brakes', run: true });
  household.must('work.read', { session, at: at('brakes', 'step-1'), read: pad(5.5) });
  household.must('work.photo', { session, car: 'pip', at: at('brakes', 'step-1'), paper: PAPER });
  const { observation } = household.must('work.find', { session, at: at('oil', 'step-2'), severity: 'soon', text: 'Weeping plug' });
  return { household: household.at('09:15:00'), session, other: other?.id ?? '', observation };
}

const show = (household: MemoryHousehold, session: string) => {
  const { steps, tasks, running, finds, found, photos, begunAt } = household.must('work.show', { session });
  return {
    ticked: steps.flatMap(({ of, tick }) => (tick === null ? [] : [`${of[0]?.task} ${of[0]?.step} ${tick.as}${tick.note === '' ? '' : `: ${tick.note}`}`])),
    values: steps.flatMap((step) => step.values.map((one) => one.read.typed.value)),
    seconds: Object.fromEntries(tasks.map((one) => [one.key, one.seconds])),
    running, begunAt, found: found.map((one) => one.text), finds: finds.length, photos: photos.map((one) => one.paper),
  };
};
const EMPTY = { ticked: [], values: [], found: [], finds: 0, photos: [], running: null };

describe('a begun session that joins another', () => {
  test('says at once where a car comes to more photographs than its record holds', () => {
    const { household, session, other } = inHand();
    const photograph = (to: string, first: number, count: number) => {
      for (let n = first; n < first + count; n += 1) household.must('work.photo', { session: to, car: 'pip', paper: n.toString(16).padStart(64, '0') });
    };
    const notes = () => household.must('session.move', { session, day: '2026-12-13' as never }).notes.filter((one) => one.includes('photographs'));
    photograph(session, 0, 30);
    household.must('session.move', { session: other, day: '2026-12-13' as never });
    household.on('2026-12-13').must('work.begin', { session: other });
    photograph(other, 30, 10);
    expect(notes()).toEqual(['Pip now has 41 photographs in one session, and its record holds 40: take some from the work before you close it. They stay among the papers.']);
  });

  test('takes ticks, times, values, photographs and finds along; the cautions there are still to be read', () => {
    const { household, session, other } = inHand();
    const moved = household.must('session.move', { session, day: LATER as never });
    expect(moved.session).toMatchObject({ id: other, tasks: [item('polish'), item('oil'), item('brakes')] });
    expect(moved.notes).toContain('What was ticked, timed and found on it went along. Read the cautions there before you go on.');
    // By hand: ten minutes of oil; five of brakes, paused as it moved.
    expect(show(household.at('12:00:00'), other)).toEqual({
      ticked: ['item/oil step-1 done', 'item/oil step-3 left-out: no oil'], values: [5.5], seconds: { 'item/oil': 600, 'item/brakes': 300, 'item/polish': 0 },
      running: null, begunAt: null, found: ['Weeping plug'], finds: 1, photos: [PAPER],
    });
  });

  test('joins one that was begun, and says only that all went along', () => {
    const { household, session, other } = inHand();
    household.must('work.begin', { session: other });
    expect(household.must('session.move', { session, day: LATER as never }).notes).toContain('What was ticked, timed and found on it went along.');
    expect(show(household, other)).toMatchObject({ begunAt: `${SESSION_DAY}T09:15:00.000Z`, finds: 1 });
  });

  test('time that ran on unattended counts to the last sign of work', () => {
    const { household, session, other } = inHand();
    household.at('11:30:00').must('session.move', { session, day: LATER as never });
    expect(show(household, other).seconds).toMatchObject({ 'item/oil': 600, 'item/brakes': 0 });
  });

  test('closed on its new day it gives the same record as before', () => {
    const { household, session, other, observation } = inHand();
    household.must('session.move', { session, day: LATER as never });
    household.on(LATER).must('work.begin', { session: other });
    const car = household.must('work.closing', { session: other }).cars[0];
    expect(car).toMatchObject({ found: 1, photos: 1 });
    expect(car?.tasks.map(({ key, ticked, minutes, outcome }) => [key, ticked, minutes, outcome])).toEqual([['item/oil', 1, 10, null], ['item/brakes', 0, 5, null], ['item/polish', 0, null, 'not-done']]);
    // Papers are kept by the host: here there are none to refer to.
    for (const { id } of household.must('work.show', { session: other }).photos) household.must('work.drop-photo', { session: other, photo: id });
    const closed = household.must('session.close', { session: other, cars: [{ car: 'pip', lines: [{ item: 'oil', outcome: 'done', minutes: 10 }, { item: 'brakes', outcome: 'good' }], measured: [{ value: car?.values[0]?.id ?? '' }] }] });
    expect(closed.observations.find((one) => one.id === observation.id)?.record).toBe(closed.records[0]?.record.id);
    expect(closed.measurements).toMatchObject([{ value: 5.5 }]);
  });

  test('moved to a free day keeps what is its own, running time too', () => {
    const { household, session } = inHand();
    const before = show(household, session);
    expect(household.must('session.move', { session, day: '2026-12-19' as never })).toMatchObject({ session: { id: session }, notes: [] });
    expect(show(household, session)).toEqual(before);
  });
});

describe('a task that moves by itself', () => {
  test('takes what is its own along, and leaves the rest', () => {
    const { household, session, other } = inHand();
    household.must('session.move', { session, day: LATER as never, tasks: [item('brakes')] });
    expect(show(household, session)).toEqual({ ...EMPTY, ticked: ['item/oil step-1 done', 'item/oil step-3 left-out: no oil'], seconds: { 'item/oil': 600 }, found: ['Weeping plug'], finds: 1, begunAt: `${SESSION_DAY}T09:00:00.000Z` });
    expect(show(household, other)).toEqual({ ...EMPTY, values: [5.5], seconds: { 'item/brakes': 300, 'item/polish': 0 }, photos: [PAPER], begunAt: null });
  });

  test('a photograph of the car alone goes only with the last task on it', () => {
    const { household, session, other } = inHand();
    const whole = 'b'.repeat(64);
    household.must('work.photo', { session, car: 'pip', paper: whole });
    household.must('session.move', { session, day: LATER as never, tasks: [item('brakes')] });
    expect(show(household, session).photos).toEqual([whole]);
    household.must('session.move', { session, day: LATER as never });
    expect(show(household, other).photos.sort()).toEqual([PAPER, whole]);
  });

  test('a step of several tasks counts as ticked in both sessions', () => {
    const { household, session, other } = inHand();
    household.must('work.tick', { session, of: [at('oil', 'step-2'), at('brakes', 'step-2')] });
    household.must('session.move', { session, day: LATER as never, tasks: [item('brakes')] });
    expect(show(household, session).ticked).toContain('item/oil step-2 done');
    expect(show(household, other).ticked).toEqual(['item/brakes step-2 done']);
  });
});

describe('what stands in both sessions is there once, the later one', () => {
  /** The brakes went ahead with a tick, a value and a photograph, and the rest is worked on with the brakes put back in. */
  function twice(firstTick: 'done' | 'left-out', secondFirst: boolean) {
    const { household, session, other } = begun();
    const work = (own: string, time: string, as: 'done' | 'left-out', value: number) => {
      household.at(time).must('work.tick', { session: own, of: [at('brakes', 'step-2')], as, note: as === 'done' ? '' : 'dark' });
      household.must('work.read', { session: own, at: at('brakes', 'step-1'), read: pad(value) });
      household.must('work.photo', { session: own, car: 'pip', at: at('brakes', 'step-1'), paper: PAPER });
    };
    work(session, secondFirst ? '09:30:00' : '09:10:00', firstTick, 5);
    household.must('session.release', { session, tasks: [item('brakes')], sure: true });
    household.must('session.move', { session: other, day: LATER as never });
    household.must('session.keep', { sessions: [{ day: LATER as never, place: 'home', tasks: [item('brakes')] }] });
    household.must('work.begin', { session: other });
    work(other, secondFirst ? '09:20:00' : '09:40:00', 'done', 4);
    household.must('session.move', { session, day: LATER as never });
    expect(ticksOf(household.facts(), other)).toHaveLength(1);
    return show(household, other);
  }

  function begun() {
    const { household, session } = begunHousehold(['oil', 'brakes']);
    const [other] = household.must('session.keep', { sessions: [{ day: '2026-12-19' as never, place: 'home', tasks: [item('polish')] }] }).sessions;
    return { household, session, other: other?.id ?? '' };
  }

  test('where the one that stood there is later', () => {
    expect(twice('left-out', false)).toMatchObject({ ticked: ['item/brakes step-2 done'], values: [4], photos: [PAPER] });
  });

  test('where the one that joins is later', () => {
    expect(twice('left-out', true)).toMatchObject({ ticked: ['item/brakes step-2 left-out: dark'], values: [5], photos: [PAPER] });
  });
});

describe('work in hand', () => {
  test('is not dropped with its session unless one is sure, and the sentence says what it is', () => {
    const { household, session } = inHand();
    const before = household.entries.length;
    for (const as of ['cancelled', 'done'] as const) {
      expect(household.call('session.end', { session, as })).toEqual({ ok: false, refusal: { code: 'work-in-hand', values: { what: '2 ticked, 15 min, 1 read, 1 photographed, 1 found' }, path: ['sure'] } });
    }
    expect(household.entries).toHaveLength(before);
    expect(household.must('session.end', { session, as: 'cancelled', sure: true }).session.state).toBe('cancelled');
    // What was found stands on the car for all that.
    expect(household.must('car.show', { car: 'pip' }).observations).toMatchObject([{ text: 'Weeping plug', closedOn: null }]);
  });

  test('of a task is not left behind by taking it out unless one is sure; a task without any is taken out', () => {
    const { household, session } = inHand();
    expect(household.call('session.release', { session, tasks: [item('brakes')] })).toMatchObject({ ok: false, refusal: { code: 'work-in-hand-on-task', values: { what: '5 min, 1 read, 1 photographed' } } });
    expect(household.must('session.release', { session, tasks: [item('brakes')], sure: true }).session.tasks).toEqual([item('oil')]);
    const fresh = begunHousehold(['oil', 'brakes']);
    expect(fresh.household.must('session.release', { session: fresh.session, tasks: [item('brakes')] }).session.tasks).toEqual([item('oil')]);
  });

  test('there is none where it was begun and nothing done: it is dropped without a question', () => {
    const { household, session } = begunHousehold();
    expect(household.must('session.end', { session, as: 'cancelled' }).session.state).toBe('cancelled');
  });
});
