import { describe, expect, test } from 'vitest';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** Two cars with the same task under two spellings, and an electric one. */
function withSheet(): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip', power: 'petrol' });
  household.must('car.add', { id: 'heron', name: 'Heron', power: 'diesel' });
  household.must('car.add', { id: 'ember', name: 'Ember', power: 'electric' });
  const interval = { repeat: { months: 12, distance: null } };
  household.must('item.add', { id: 'pip-oil', car: 'pip', name: 'Engine oil and filter', interval, access: ['Under-tray'] });
  household.must('item.add', { id: 'heron-oil', car: 'heron', name: 'engine oil & filter', interval, access: ['undertray'] });
  household.must('item.add', { id: 'heron-belt', car: 'heron', name: 'Timing belt', interval });
  household.must('item.add', { id: 'ember-look', car: 'ember', name: 'Something of its own', interval });
  household.must('card.set', { car: 'heron', key: 'own-1', name: 'Cover screws', value: 8, unit: 'Nm', source: 'page 4' });
  household.must('sheet.set', {
    item: 'heron-oil',
    steps: [
      { text: 'Open', access: { name: 'undertray', way: 'open' } },
      {
        text: 'Fill and tighten', hazards: ['used-oil'], measure: { kind: 'battery-voltage' },
        torques: [{ by: 'figure', figure: 'oil-drain-torque', name: null }, { by: 'figure', figure: 'own-1', name: null }, { by: 'own', name: 'Bracket', typed: { value: 24, unit: 'Nm' }, source: 'page 9' }],
        fluids: [{ name: 'engine oil', specification: { figure: 'engine-oil-specification' }, quantity: { figure: 'engine-oil-quantity' } }],
      },
    ],
    checks: ['Dry'], reset: 'Hold the button.', followUps: [{ text: 'Level', days: 7 }], note: 'Mine',
  });
  return household;
}

describe('a sheet copied from another car', () => {
  test('takes the figures of this car\'s card and its spelling of an access, and leaves own torques behind', () => {
    const household = withSheet();
    const { sheet, leftOut } = household.must('sheet.copy', { item: 'pip-oil', from: 'heron-oil' });
    expect(leftOut).toEqual({ torques: ['Bracket'], figures: [] });
    expect(sheet).toMatchObject({ id: 'pip-oil', car: 'pip', checks: ['Dry'], reset: 'Hold the button.', note: 'Mine', steps: [{ id: 'step-1', access: { name: 'Under-tray' } }, { id: 'step-2', hazards: ['used-oil'] }] });
    // A figure of the keeper's own comes by its name, for its value is the other car's.
    expect(sheet.steps[1]?.torques).toEqual([{ by: 'figure', figure: 'oil-drain-torque', name: null }, { by: 'figure', figure: 'own-1', name: 'Cover screws' }]);
    household.must('card.set', { car: 'pip', key: 'oil-drain-torque', value: 30, unit: 'Nm' });
    expect(household.must('sheet.show', { item: 'pip-oil' }).job.torques.map((one) => [one.name, one.text])).toEqual([['Oil drain plug', '30 N·m'], ['Cover screws', 'not entered']]);
  });

  test('leaves out figures that such a car has not, and says which', () => {
    const { sheet, leftOut } = withSheet().must('sheet.copy', { item: 'ember-look', from: 'heron-oil' });
    expect(leftOut.figures).toEqual(['Oil drain plug', 'Engine oil specification', 'Engine oil, with filter']);
    expect(sheet.steps[1]).toMatchObject({ fluids: [{ name: 'engine oil', specification: null, quantity: null }] });
  });

  test('of the same car keeps own torques', () => {
    const { sheet, leftOut } = withSheet().must('sheet.copy', { item: 'heron-belt', from: 'heron-oil' });
    expect([leftOut.torques, sheet.steps[1]?.torques.length]).toEqual([[], 3]);
  });

  test('gives no step the number of one that stood before', () => {
    const household = withSheet();
    household.must('sheet.set', { item: 'pip-oil', steps: [{ text: 'My way' }] });
    expect(household.must('sheet.copy', { item: 'pip-oil', from: 'heron-oil', replace: true }).sheet.steps.map((step) => step.id)).toEqual(['step-2', 'step-3']);
  });

  test.each([
    { request: { item: 'none', from: 'heron-oil' }, code: 'unknown-item' },
    { request: { item: 'pip-oil', from: 'heron-belt' }, code: 'no-sheet' },
    { request: { item: 'heron-oil', from: 'heron-oil' }, code: 'sheet-copy-itself' },
    { request: { item: 'pip-oil', from: 'heron-oil' }, code: 'sheet-stands' },
  ])('is refused: $code', ({ request, code }) => {
    const household = withSheet();
    household.must('sheet.set', { item: 'pip-oil', steps: [{ text: 'My way' }] });
    expect(household.call('sheet.copy', request)).toMatchObject({ ok: false, refusal: { code } });
  });
});

describe('what the editor of a sheet needs', () => {
  test('names the sheets of the same work on other cars, whatever the spelling, with their own torques', () => {
    const household = withSheet();
    expect(household.must('sheet.editing', { item: 'pip-oil' })).toMatchObject({ sheet: null, carName: 'Pip', elsewhere: [{ item: 'heron-oil', carName: 'Heron', steps: 2, ownTorques: 1 }] });
    expect(household.must('sheet.editing', { item: 'heron-oil' }).elsewhere).toEqual([]);
    expect(household.must('sheet.editing', { item: 'ember-look' }).elsewhere).toEqual([]);
  });

  test('names what can be chosen: accesses of this item first, tools by name, hazards the gravest first', () => {
    const household = withSheet();
    household.must('tool.set', { name: 'ramps', state: 'owned' });
    household.must('tool.set', { name: 'funnel', state: 'missing' });
    household.must('item.add', { car: 'pip', name: 'Other', interval: { repeat: { months: 12, distance: null } }, access: ['Bonnet'] });
    const { accesses, tools, hazards, disposal } = household.must('sheet.editing', { item: 'pip-oil' });
    expect([accesses, tools]).toEqual([['Under-tray', 'Bonnet'], ['funnel', 'ramps']]);
    expect([hazards[0], disposal[0]]).toEqual([{ hazard: 'high-voltage', name: 'High voltage' }, { what: 'used-oil', name: 'used oil' }]);
  });

  test('asks about an unlikely torque of one\'s own in a sentence', () => {
    const household = withSheet();
    household.must('sheet.set', { item: 'pip-oil', steps: [{ text: 'Tighten', torques: [{ by: 'own', name: 'Bolt', typed: { value: 5, unit: 'Nm' }, on: { joint: 'bolt', thread: 'M12', strength: '8.8', seat: null }, source: 'page 2' }] }] });
    const { questions } = household.must('sheet.editing', { item: 'pip-oil' });
    expect(questions).toMatchObject([{ step: 'step-1', torque: 'Bolt' }]);
    expect(questions[0]?.said.text).toMatch(/^5 N·m is little for M12: /);
  });
});

describe('a refusal names the very field', () => {
  const path = (step: object) => {
    const result = withSheet().call('sheet.set', { item: 'pip-oil', steps: [{ text: 'First' }, { text: 'x', ...step }] });
    return result.ok ? null : result.refusal.path?.join('.');
  };
  test.each([
    { step: { torques: [{ by: 'figure', figure: 'oil-drain-torque' }, { by: 'own', name: 'a', typed: { value: 0, unit: 'Nm' }, source: 'b' }] }, at: 'steps.1.torques.1.typed.value' },
    { step: { torques: [{ by: 'figure', figure: 'fuel' }] }, at: 'steps.1.torques.0.figure' },
    { step: { fluids: [{ name: 'a' }, { name: 'oil', quantity: { figure: 'wheel-torque' } }] }, at: 'steps.1.fluids.1.quantity' },
    { step: { figures: [{ figure: 'mystery' }] }, at: 'steps.1.figures.0.figure' },
    { step: { text: ' ' }, at: 'steps.1.text' },
  ])('$at', ({ step, at }) => {
    expect(path(step)).toBe(at);
  });
});
