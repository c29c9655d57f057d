import { describe, expect, test } from 'vitest';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import { figuresFor } from '../../../shared-core/fleet/known-figures.ts';
import { newEntry } from '../../../shared-core/journal/entry-kind.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import { paperKept } from '../../../shared-core/records/paper.ts';
import { setCardFigure } from '../../../shared-core/fleet/set-card-figure.ts';
import { parseRequest } from '../../../shared-core/result/parse-request.ts';
import { papersOfCar } from '../../../shared-core/views/papers-of-car.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

function withPip(): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip', year: 2022, description: 'small hatch', firstRegistered: day('2022-11-01') });
  return household;
}

const show = (household: MemoryHousehold) => household.must('card.show', { car: 'Pip' });
const figure = (household: MemoryHousehold, key: string) => show(household).groups.flatMap((group) => group.figures).find((one) => one.key === key);

describe('an empty card', () => {
  test('names every figure that the car has as not entered, and where it is missed', () => {
    const card = show(withPip());
    expect([card.entered, card.missing, card.withoutSource]).toEqual([0, figuresFor({ power: 'petrol' }).length, 0]);
    expect(card.groups.map((group) => group.name)).toEqual(['Fluids', 'Tyres', 'Torques', 'Raising and towing', 'Electrical', 'What fits, and limits']);
    const figures = card.groups.flatMap((group) => group.figures);
    expect(new Set(figures.map((one) => one.text))).toEqual(new Set(['not entered']));
    expect(figures.every((one) => one.missed.length > 0 && one.missed.every(({ text }) => text.endsWith('.')))).toBe(true);
    expect(card.car).toEqual({ id: 'pip', name: 'Pip', description: 'small hatch', year: 2022 });
  });

  test('names the car\'s items that want a figure', () => {
    const household = withPip();
    const { items } = household.must('items.start', { car: 'pip' });
    const oil = items.find((item) => item.name === 'Engine oil and filter');
    expect(figure(household, 'engine-oil-quantity')?.items).toEqual([{ item: oil?.id, name: 'Engine oil and filter' }]);
    expect(figure(household, 'fuel')?.items).toEqual([]);
  });
});

describe('an entered figure', () => {
  test.each([
    { key: 'engine-oil-quantity', value: 4.3, unit: 'l', text: '4.3 L', others: ['4.54 US qt', '7.57 imp pt'] },
    { key: 'tyre-pressure-front', value: 2.2, unit: 'bar', text: '2.2 bar', others: ['31.9 psi', '220 kPa'] },
    { key: 'wheel-torque', value: 110, unit: 'Nm', thread: 'M12x1.5', text: '110 N·m (M12x1.5)', others: ['81.1 lbf·ft'] },
    { key: 'spark-plug-gap', value: 0.7, unit: 'mm', text: '0.7 mm', others: ['0.0276 in'] },
    { key: 'jacking-points', value: 'Behind the front wheels, marked', text: 'Behind the front wheels, marked', others: [] },
  ])('$key: $text', ({ key, text, others, ...given }) => {
    // By hand: 4.3 / 0.946353 = 4.54; 4.3 / 0.568261 = 7.57; 0.7 / 25.4 = 0.02756; the rest of the reference table.
    const household = withPip();
    household.must('card.set', { car: 'pip', key, ...given });
    expect(figure(household, key)).toMatchObject({ entered: true, own: false, text, otherUnits: others, missed: [], source: null });
    expect(show(household)).toMatchObject({ entered: 1, missing: figuresFor({ power: 'petrol' }).length - 1, withoutSource: 1 });
  });

  test('with its source is not counted as without', () => {
    const household = withPip();
    household.must('card.set', { car: 'pip', key: 'battery', value: '60 Ah', source: 'Handbook, page 3', note: 'Reset the windows after it.' });
    expect([show(household).withoutSource, figure(household, 'battery')]).toMatchObject([0, { source: 'Handbook, page 3', note: 'Reset the windows after it.' }]);
  });

  test('says the question about a torque, until the keeper is sure', () => {
    const household = withPip();
    const torque = { car: 'pip', key: 'wheel-torque', value: 11, unit: 'Nm', thread: 'M12' };
    household.must('card.set', torque);
    expect(figure(household, 'wheel-torque')?.question?.code).toBe('torque-low-in');
    expect(figure(household, 'wheel-torque')?.question?.text).toContain('11 kgf·m');
    household.must('card.set', { ...torque, sure: true });
    expect(figure(household, 'wheel-torque')).toMatchObject({ question: null, sure: true });
  });

  test('of one\'s own stands last, by name', () => {
    const household = withPip();
    household.must('card.set', { car: 'pip', key: 'roof', name: 'Roof load', value: '75 kg' });
    household.must('card.set', { car: 'pip', key: 'aerial', name: 'Aerial thread', value: 'M5' });
    expect(show(household).groups.at(-1)).toMatchObject({ group: 'own', name: 'Your own', figures: [{ name: 'Aerial thread', own: true }, { name: 'Roof load', own: true }] });
  });

  test('stays on the card of a car that turns out to be electric', () => {
    const household = withPip();
    household.must('card.set', { car: 'pip', key: 'engine-oil-quantity', value: 4.3, unit: 'l' });
    household.must('car.change', { id: 'pip', power: 'electric' });
    expect([figure(household, 'engine-oil-quantity')?.text, figure(household, 'engine-oil-specification')]).toEqual(['4.3 L', undefined]);
  });
});

test('a sheet that a figure stands on is one of the car\'s papers', () => {
  const sheet = { id: 'a'.repeat(64), name: 'maker sheet.pdf', media: 'application/pdf', bytes: 9 } as const;
  const household = withPip();
  const entries = [...household.entries, { ...newEntry(paperKept, sheet), seq: household.entries.length, at: '2026-11-25T12:00:00.000Z' }];
  const facts = memoryFacts(entryKinds, entries);
  const request = parseRequest(setCardFigure.request, { car: 'pip', key: 'wheel-torque', value: 110, unit: 'Nm', paper: sheet.id });
  const decided = request.ok ? setCardFigure.decide(facts, request.value, { today: day('2026-11-25'), now: '2026-11-25T12:00:00.000Z', newId: () => 'torque' }) : request;
  if (!decided.ok) throw new Error(decided.refusal.code);
  const after = memoryFacts(entryKinds, [...entries, ...decided.value.entries.map((entry) => ({ ...entry, seq: entries.length, at: '2026-11-25T12:00:00.000Z' }))]);
  expect(papersOfCar(after, 'pip')).toEqual([sheet.id]);
});

test('a figure of one\'s own that a sheet names is missed until it is entered', () => {
  const household = withPip();
  household.must('item.add', { id: 'look', car: 'pip', name: 'A look', interval: { repeat: { months: 12, distance: null } } });
  household.must('sheet.set', { item: 'look', steps: [{ text: 'Tighten', torques: [{ by: 'figure', figure: 'own-1', name: 'Cover screws' }] }] });
  expect(figure(household, 'own-1')).toMatchObject({ name: 'Cover screws', kind: 'torque', own: true, entered: false, items: [{ item: 'look', name: 'A look' }], missed: [{ text: 'A job sheet names it and leaves it blank.' }] });
  household.must('card.set', { car: 'pip', key: 'own-1', name: 'Cover screws', value: 8, unit: 'Nm' });
  expect(show(household).groups.flatMap((group) => group.figures).filter((one) => one.own)).toMatchObject([{ key: 'own-1', entered: true, text: '8 N·m' }]);
});
