import { describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Entry } from '../../../shared-core/journal/entry-kind.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import { taskSheets, taskSheetSchema } from '../../../shared-core/work/task-sheet.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

function withPip(): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip', power: 'petrol' });
  household.must('car.add', { id: 'ember', name: 'Ember', power: 'electric' });
  household.must('item.add', { id: 'oil', car: 'pip', name: 'Engine oil and filter', interval: { repeat: { months: 12, distance: null } }, access: ['Under-tray'] });
  household.must('item.add', { id: 'look', car: 'ember', name: 'Tyres', interval: { repeat: { months: 12, distance: null } } });
  return household;
}

/** An entry as version 1 wrote it. Frozen: it is never brought up to date, for that is what the program must do. */
const VERSION_1 = {
  id: 'oil', car: 'pip', startedFrom: 'engine-oil-and-filter', hazards: ['used-oil'], checks: ['dry'], reset: 'hold the button', note: 'a note',
  followUps: [{ text: 'level when warm', days: 1, distance: null }, { text: 'wheels', days: null, distance: { value: 50, unit: 'km' } }],
  steps: [{
    id: 'step-1', text: 'Drain', turn: 'drain', access: { name: 'undertray', way: 'open' },
    torques: [{ by: 'figure', figure: 'oil-drain-torque', name: null }, { by: 'own', name: 'bracket', typed: { value: 8, unit: 'lbf-ft' }, on: { joint: 'bolt', thread: 'M8', strength: null, seat: null }, source: 'sheet 9', sure: false }],
    fluids: [{ name: 'oil', specification: { figure: 'engine-oil-specification', name: null }, quantity: null }], figures: [{ figure: 'jacking-points', name: null }], tools: ['pan'],
    measure: { kind: 'other', name: 'metal', place: null }, hazards: ['hot'], disposal: ['used-oil'],
  }],
};

describe('the sheet of an item', () => {
  test('is written with step numbers, and keeps them when it is changed', () => {
    const household = withPip();
    const first = household.must('sheet.set', { item: 'oil', steps: [{ text: 'Drain', turn: 'drain' }, { text: 'Fill' }] });
    expect(first.sheet).toMatchObject({ id: 'oil', car: 'pip', startedFrom: null, steps: [{ id: 'step-1', turn: 'drain', torques: [], access: null }, { id: 'step-2', turn: 'work' }] });
    const second = household.must('sheet.set', { item: 'oil', steps: [{ id: 'step-1', text: 'Drain warm' }, { text: 'Plug' }] });
    // The number of the step that was taken out is not given again.
    expect(second.sheet.steps.map((step) => [step.id, step.text])).toEqual([['step-1', 'Drain warm'], ['step-3', 'Plug']]);
  });

  test('is begun from a starting sheet in the item\'s own spelling, and edited after', () => {
    const household = withPip();
    const { sheet } = household.must('sheet.start', { item: 'oil', from: 'engine-oil-and-filter' });
    expect(sheet.startedFrom).toBe('engine-oil-and-filter');
    expect(new Set(sheet.steps.flatMap((step) => step.access?.name ?? []))).toEqual(new Set(['car raised', 'Under-tray']));
    const { id: _id, car: _car, startedFrom: _from, ...rest } = sheet;
    const edited = household.must('sheet.set', { ...rest, item: 'oil', steps: sheet.steps.slice(1) });
    expect([edited.sheet.startedFrom, edited.sheet.steps[0]?.id, edited.sheet.steps.length]).toEqual(['engine-oil-and-filter', 'step-2', sheet.steps.length - 1]);
  });

  test('that stands is not written over by a starting sheet unless that is meant', () => {
    const household = withPip();
    household.must('sheet.set', { item: 'oil', steps: [{ text: 'My way' }] });
    expect(household.call('sheet.start', { item: 'oil', from: 'engine-oil-and-filter' })).toMatchObject({ ok: false, refusal: { code: 'sheet-stands', path: ['item'] } });
    expect(household.must('sheet.start', { item: 'oil', from: 'engine-oil-and-filter', replace: true }).sheet.steps[0]?.id).toBe('step-2');
  });

  test('is taken away, and then is not there', () => {
    const household = withPip();
    household.must('sheet.set', { item: 'oil', steps: [{ text: 'Drain' }] });
    expect(household.must('sheet.remove', { item: 'oil' }).sheet.steps.length).toBe(1);
    expect(household.facts().all(taskSheets)).toEqual([]);
    expect(household.call('sheet.remove', { item: 'oil' })).toMatchObject({ ok: false, refusal: { code: 'no-sheet' } });
  });

  test('a torque of one\'s own is kept and asked about where it is unlikely, until one is sure', () => {
    const household = withPip();
    const torque = (sure: boolean) => ({ by: 'own', name: 'Wheel bolts', typed: { value: 10, unit: 'Nm' }, on: { joint: 'bolt', thread: 'M12x1.5', strength: '8.8', seat: null }, source: 'page 233', sure }) as const;
    const asked = household.must('sheet.set', { item: 'oil', steps: [{ text: 'Tighten', torques: [torque(false)] }] });
    // By hand: 0.6 x 74 = 44.4 N m is the least that is not asked about for M12 of 8.8 (reference section 5c, seen); 10 kgf m = 98 N m lies in the band of 74 to 103.
    expect(asked.questions).toMatchObject([{ step: 'step-1', torque: 'Wheel bolts', question: { key: 'torque-low-in', values: { value: 10, meant: 'kgf·m' } } }]);
    expect(asked.sheet.steps[0]?.torques).toMatchObject([{ typed: { value: 10, unit: 'Nm' } }]);
    expect(household.must('sheet.set', { item: 'oil', steps: [{ text: 'Tighten', torques: [torque(true)] }] }).questions).toEqual([]);
  });

  test.each<{ case: string; request: Partial<RequestOf<'sheet.set'>>; code: string }>([
    { case: 'an unknown item', request: { item: 'none' }, code: 'unknown-item' },
    { case: 'a step id twice', request: { steps: [{ id: 'a', text: 'x' }, { id: 'a', text: 'y' }] }, code: 'step-id-twice' },
    { case: 'a step without words', request: { steps: [{ text: ' ' }] }, code: 'text-empty' },
    { case: 'an access opened again', request: { steps: [{ text: 'x', access: { name: 'tray', way: 'open' } }, { text: 'y', access: { name: 'Tray', way: 'close' } }, { text: 'z', access: { name: 'tray', way: 'open' } }] }, code: 'access-opened-again' },
    { case: 'a value of one\'s own without a name', request: { steps: [{ text: 'x', measure: { kind: 'other' } }] }, code: 'step-measure-unnamed' },
    { case: 'a figure nobody knows', request: { steps: [{ text: 'x', figures: [{ figure: 'mystery' }] }] }, code: 'step-figure-unnamed' },
    { case: 'a torque by a figure that is none', request: { steps: [{ text: 'x', torques: [{ by: 'figure', figure: 'fuel' }] }] }, code: 'step-figure-not-torque' },
    { case: 'a quantity by a torque', request: { steps: [{ text: 'x', fluids: [{ name: 'oil', quantity: { figure: 'wheel-torque' } }] }] }, code: 'step-figure-not-volume' },
    { case: 'a specification by a quantity', request: { steps: [{ text: 'x', fluids: [{ name: 'oil', specification: { figure: 'coolant-quantity' } }] }] }, code: 'step-figure-not-text' },
    { case: 'engine oil of an electric car', request: { item: 'look', steps: [{ text: 'x', fluids: [{ name: 'oil', quantity: { figure: 'engine-oil-quantity' } }] }] }, code: 'figure-not-of-car' },
    { case: 'a torque of nothing', request: { steps: [{ text: 'x', torques: [{ by: 'own', name: 'a', typed: { value: 0, unit: 'Nm' }, source: 'b' }] }] }, code: 'not-a-torque' },
    { case: 'a look again without when', request: { followUps: [{ text: 'look' }] }, code: 'follow-up-without-when' },
    { case: 'a hazard of fantasy', request: { hazards: ['dragons' as never] }, code: 'unknown-hazard' },
  ])('$case is refused: $code', ({ request, code }) => {
    const household = withPip();
    expect(household.call('sheet.set', { item: 'oil', steps: [{ text: 'Drain' }], ...request })).toMatchObject({ ok: false, refusal: { code } });
    expect(household.facts().all(taskSheets)).toEqual([]);
  });

  test.each([
    { rule: { text: 'Level', days: 0 }, code: 'follow-up-rule-no-days', path: ['followUps', 1, 'days'] },
    { rule: { text: 'Bolts', distance: { value: 0, unit: 'km' as const } }, code: 'follow-up-no-distance', path: ['followUps', 1, 'distance', 'value'] },
  ])('looking again after nothing is refused: $code', ({ rule, code, path }) => {
    const sheet = { item: 'oil', steps: [{ text: 'Drain' }] };
    const household = withPip();
    expect(household.call('sheet.set', { ...sheet, followUps: [{ text: 'Leaks', days: 1 }, rule] })).toMatchObject({ ok: false, refusal: { code, path } });
    expect(household.must('sheet.set', { ...sheet, followUps: [{ text: 'Leaks', days: 1 }, { text: 'Bolts', distance: { value: 1, unit: 'km' } }] }).sheet.followUps).toHaveLength(2);
  });

  test('an own torque needs its source', () => {
    expect(withPip().call('sheet.set', { item: 'oil', steps: [{ text: 'x', torques: [{ by: 'own', name: 'a', typed: { value: 30, unit: 'Nm' } } as never] }] }).ok).toBe(false);
  });

  test.each([
    { request: { item: 'look', from: 'engine-oil-and-filter' }, code: 'sheet-not-for-car' }, { request: { item: 'oil', from: 'nothing' }, code: 'unknown-starting-sheet' }, { request: { item: 'none', from: 'coolant' }, code: 'unknown-item' },
  ])('starting is refused: $code', ({ request, code }) => {
    expect(withPip().call('sheet.start', request)).toMatchObject({ ok: false, refusal: { code } });
  });

  test('the list of starting sheets says which fit, and which one an item calls for', () => {
    const { suggested, sheets } = withPip().must('sheets.starting', { item: 'oil' });
    expect(suggested).toBe('engine-oil-and-filter');
    expect([sheets.find((one) => one.key === 'fuel-filter')?.fits, sheets.find((one) => one.key === 'spark-plugs')?.fits]).toEqual([false, true]);
    expect(withPip().must('sheets.starting', {}).suggested).toBeNull();
  });
});

test('an entry of version 1 stands as it was written', () => {
  const entry = { seq: 0, at: '2026-11-25T09:00:08.000Z', kind: 'task-sheet-set', version: 1, subject: 'car/pip', values: VERSION_1 } as unknown as Entry;
  const value = memoryFacts(entryKinds, [entry]).get(taskSheets, 'oil') as z.infer<typeof taskSheetSchema> | null;
  expect(value).toEqual(VERSION_1);
  expect(taskSheetSchema.parse(value)).toEqual(VERSION_1);
  expect([entryKinds.get('task-sheet-set')?.version, entryKinds.get('task-sheet-removed')?.version]).toEqual([1, 1]);
});
