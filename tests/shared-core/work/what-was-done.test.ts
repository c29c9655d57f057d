import { describe, expect, test } from 'vitest';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { begunHousehold, householdWithSession, SESSION_DAY } from './doing-household.ts';

const show = (household: MemoryHousehold, session: string) => household.must('work.show', { session });
const steps = (household: MemoryHousehold, session: string) => show(household, session).steps;
const told = (household: MemoryHousehold, session: string) => Object.fromEntries(steps(household, session).map((one) => [one.text, one.tick?.as ?? null]));
const tickAll = (household: MemoryHousehold, session: string) => steps(household, session).forEach(({ of }) => household.must('work.tick', { session, of }));
const keep = (household: MemoryHousehold, ...ids: string[]) => household.must('session.keep', { sessions: [{ day: SESSION_DAY as never, place: 'home', tasks: ids.map((id) => ({ kind: 'item' as const, id })) }] });
const OIL = { item: 'oil', checks: ['No drop below'], reset: 'Set the reminder back' };

describe('a sheet of the keeper’s own', () => {
  test('takes no caution away, and says what its turn leaves over', () => {
    const household = householdWithSession();
    household.must('item.add', { id: 'fluid', car: 'pip', name: 'Brake fluid', interval: { repeat: { months: 24, distance: null } } });
    household.must('sheet.set', { item: 'fluid', steps: [{ text: 'Jack the car up, take the wheels off, bleed the brakes.', turn: 'drain' }] });
    const shown = household.must('sheet.show', { item: 'fluid' });
    expect(shown.cautions.map((one) => one.hazard)).toEqual([null, 'lifting', 'brakes', 'brake-fluid', 'heavy']);
    expect(shown.disposal.map((one) => one.what)).toEqual(['brake-fluid']);
  });

  test('adds its own to those of the starting sheet', () => {
    const household = householdWithSession();
    household.must('sheet.set', { item: 'brakes', hazards: ['battery'], steps: [{ text: 'Look.', hazards: ['airbag'] }] });
    expect(household.must('sheet.show', { item: 'brakes' }).cautions.flatMap((one) => one.hazard ?? [])).toEqual(['airbag', 'lifting', 'brakes', 'battery', 'heavy']);
  });
});

describe('cautions that come to a session once it is begun', () => {
  const entries = (household: MemoryHousehold, session: string) => [
    household.call('work.tick', { session, of: [{ task: 'item/polish', step: 'whole' }] }),
    household.call('work.time', { session, task: 'item/polish', run: true }),
    household.call('work.find', { session, at: { task: 'item/polish', step: 'whole' }, severity: 'watch' }),
    household.call('work.read', { session, at: { task: 'item/oil', step: 'step-2' }, read: { kind: 'torque', name: 'Drain plug', typed: { value: 30, unit: 'Nm' } } }),
  ];

  test('are read before anything more is entered, those alone, and it stays begun', () => {
    const { household, session } = begunHousehold(['polish']);
    expect(show(household, session).unread).toEqual([]);
    keep(household, 'oil', 'brakes');
    const joined = show(household, session);
    expect(joined.begunAt).toBe(`${SESSION_DAY}T09:00:00.000Z`);
    expect(joined.unread.map((one) => [one.key, one.tasks])).toEqual([
      ['lifting', ['item/brakes', 'item/oil']], ['brakes', ['item/brakes']], ['running-engine', ['item/oil']], ['hot', ['item/oil']], ['used-oil', ['item/oil']], ['heavy', ['item/brakes']],
    ]);
    for (const answer of entries(household, session)) expect(answer).toMatchObject({ ok: false, refusal: { code: 'cautions-unread' } });
    household.at('10:00:00').must('work.begin', { session });
    const read = show(household, session);
    expect([read.unread, read.begunAt]).toEqual([[], `${SESSION_DAY}T09:00:00.000Z`]);
    for (const answer of entries(household, session)) expect(answer.ok).toBe(true);
  });

  test('are asked for again where one came between the showing and the pressing', () => {
    const { household, session } = begunHousehold(['polish']);
    keep(household, 'brakes');
    const shown = show(household, session).unread.map((one) => one.key);
    keep(household, 'oil');
    household.must('work.begin', { session, read: shown });
    expect(show(household, session).unread.map((one) => one.key)).toEqual(['running-engine', 'hot', 'used-oil']);
  });

  test('come with a changed sheet too', () => {
    const { household, session } = begunHousehold();
    household.must('sheet.set', { ...OIL, steps: [{ text: 'Take the fuel line off.', hazards: ['fuel'] }] });
    expect(show(household, session).unread.map((one) => one.key)).toEqual(['fuel']);
  });

  test('of a session begun before they were noted are read once more', () => {
    const { household, session } = begunHousehold();
    const entry = household.entries.find((one) => one.kind === 'work-begun');
    delete (entry?.values as { read?: unknown }).read;
    expect(show(household, session).unread.map((one) => one.key)).toContain('brakes');
    household.must('work.begin', { session });
    expect(show(household, session).unread).toEqual([]);
  });
});

describe('a tick stays with what was done', () => {
  test('a sheet removed and written anew has nothing ticked', () => {
    const { household, session } = begunHousehold(['oil']);
    tickAll(household, session);
    household.must('sheet.remove', { item: 'oil' });
    household.must('sheet.set', { ...OIL, checks: [], reset: null, steps: [{ text: 'A.' }, { text: 'B.' }, { text: 'C.' }] });
    expect(told(household, session)).toMatchObject({ 'A.': null, 'B.': null, 'C.': null });
  });

  test('a step taken out and another written later are two', () => {
    const { household, session } = begunHousehold(['oil']);
    tickAll(household, session);
    const [one, two] = household.must('sheet.editing', { item: 'oil' }).sheet?.steps ?? [];
    if (one === undefined || two === undefined) throw new Error('two steps');
    household.must('sheet.set', { ...OIL, steps: [one, two] });
    household.must('sheet.set', { ...OIL, steps: [one, two, { text: 'Something new.' }] });
    expect(told(household, session)).toMatchObject({ 'Drain the oil.': 'done', 'Something new.': null });
  });

  test('a step on which only a value stands keeps its number too', () => {
    const { household, session } = begunHousehold(['brakes']);
    household.must('work.read', { session, at: { task: 'item/brakes', step: 'step-1' }, read: { kind: 'measured', what: 'pad', name: null, place: 'front-left', typed: { value: 6, unit: 'mm' } } });
    household.must('sheet.remove', { item: 'brakes' });
    household.must('sheet.set', { item: 'brakes', steps: [{ text: 'Measure the rear.', measure: { kind: 'pad', name: null, place: 'rear-left' } }] });
    expect(steps(household, session).map((one) => [one.text, one.values])).toEqual([['Measure the rear.', []]]);
  });

  test('a check put before another, and a reminder in other words, are open', () => {
    const { household, session } = begunHousehold(['oil']);
    tickAll(household, session);
    const sheet = household.must('sheet.editing', { item: 'oil' }).sheet;
    household.must('sheet.set', { item: 'oil', steps: sheet?.steps ?? [], checks: ['Cap is on', 'No drop below'], reset: 'Ask the garage to set it back' });
    expect(told(household, session)).toMatchObject({ 'Cap is on': null, 'No drop below': 'done', 'Ask the garage to set it back': null, 'Drain the oil.': 'done' });
  });
});

test('a session says among the others that it is begun, and how much of it is ticked', () => {
  const household = householdWithSession();
  const begun = () => household.must('sessions.show', {}).sessions[0]?.begun;
  expect(begun()).toBeNull();
  const session = household.must('sessions.show', {}).sessions[0]?.id ?? '';
  household.on(SESSION_DAY).must('work.begin', { session });
  household.must('work.tick', { session, of: steps(household, session)[0]?.of ?? [] });
  expect(begun()).toEqual({ ticked: 1, steps: 9 });
});

describe('a step of several tasks', () => {
  const joint = () => {
    const { household, session } = begunHousehold(['polish']);
    const raise = { text: 'Raise the car.', hazards: ['lifting' as const], access: { name: 'car raised', way: 'open' as const } };
    household.must('sheet.set', { item: 'oil', steps: [raise, { text: 'Drain.' }] });
    household.must('sheet.set', { item: 'brakes', steps: [raise, { text: 'Look.' }] });
    keep(household, 'oil', 'brakes');
    household.must('work.begin', { session });
    const step = () => steps(household, session).find((one) => one.text === 'Raise the car.');
    const [first, second] = [...(step()?.of ?? [])];
    if (first === undefined || second === undefined) throw new Error('of two tasks');
    return { household, session, step, first, second };
  };

  test('is left out where one of them left it out', () => {
    const { household, session, step, first, second } = joint();
    household.must('work.tick', { session, of: [first] });
    household.must('work.tick', { session, of: [second], as: 'left-out', note: 'no need' });
    expect(step()?.tick).toMatchObject({ as: 'left-out', note: 'no need' });
  });

  test('ticked for both stays ticked for one where the other is ticked anew or opened', () => {
    const { household, session, step, first, second } = joint();
    household.must('work.tick', { session, of: [first, second] });
    household.must('work.tick', { session, of: [second], as: 'left-out', note: 'no need' });
    expect(step()?.tick).toMatchObject({ as: 'left-out' });
    household.must('work.untick', { session, of: [second] });
    expect(step()?.tick).toBeNull();
    household.must('work.tick', { session, of: [second] });
    expect(step()?.tick).toMatchObject({ as: 'done' });
  });
});

describe('a value that is unlikely', () => {
  const asked = (read: object, step: string, task: string) => {
    const { household, session } = begunHousehold();
    household.must('work.read', { session, at: { task, step }, read: read as never });
    return steps(household, session).flatMap((one) => one.questions.map((question) => question.said.text));
  };
  const torque = (value: number) => asked({ kind: 'torque', name: 'Drain plug', typed: { value, unit: 'Nm' } }, 'step-2', 'item/oil');
  const pad = (value: number, unit = 'mm') => asked({ kind: 'measured', what: 'pad', name: null, place: 'front-left', typed: { value, unit } }, 'step-1', 'item/brakes');

  test('is kept and asked about, against what the sheet says', () => {
    expect(torque(9000)).toEqual(['9000 N·m is much: the sheet says 30 N·m. It is kept as written; write it anew if it was a slip.']);
    // By hand: 0.6 x 30 = 18, 1.5 x 30 = 45.
    expect([17.9, 18, 45, 45.1].map((value) => torque(value).length)).toEqual([1, 0, 0, 1]);
    expect(pad(0.0055)).toEqual(['0.0055 mm is unusual here: usual are 0.5 to 25 mm. It is kept as written; write it anew if it was a slip.']);
    expect([pad(5.5), pad(7, '32nds')]).toEqual([[], []]);
    // By hand: 0.6 / 32 in = 0.476 mm.
    expect(pad(0.6, '32nds')).toEqual(['0.6 /32 in is unusual here: usual are 0.5 to 25 mm. It is kept as written; write it anew if it was a slip.']);
  });

  test('of a joint of which nothing is known is asked about where it is more than any', () => {
    const read = (value: number) => asked({ kind: 'torque', name: 'Something else', typed: { value, unit: 'Nm' } }, 'step-2', 'item/oil').length;
    expect([500, 501].map(read)).toEqual([0, 1]);
  });
});
