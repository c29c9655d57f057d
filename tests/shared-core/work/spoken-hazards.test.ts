import { describe, expect, test } from 'vitest';
import { unmarkedHazards } from '../../../shared-core/work/spoken-hazards.ts';
import { STARTING_SHEETS } from '../../../shared-core/work/starting-sheet.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

const step = (text: string, more: object = {}) => ({ text, turn: 'work' as const, access: null, hazards: [], ...more });
const asked = (text: string, more: object = {}) => unmarkedHazards(step(text, more), []).map((one) => one.hazard);

describe('a step that speaks of a hazard which nothing marks', () => {
  test.each([
    ['Jack the car up.', ['lifting']], ['Raise the front and put it on stands.', ['lifting']], ['Drive onto the ramps.', ['lifting']],
    ['Bleed the brakes.', ['brakes']], ['Take the caliper off.', ['brakes']], ['Wipe the linings.', ['brakes']], ['Fill in brake fluid.', ['brake-fluid']], ['Undo the fuel line.', ['fuel']],
    ['Unplug the airbag.', ['airbag']], ['Follow the orange cables.', ['high-voltage']], ['Take the coil spring out.', ['springs']], ['Let the coolant out.', ['coolant']],
    ['Battery off first.', ['battery']], ['Start the engine.', ['running-engine']], ['Jack it up and bleed the brakes.', ['lifting', 'brakes']],
  ] as const)('%s', (text, hazards) => expect(asked(text)).toEqual(hazards));

  test.each(['Clean the glass, wet it and let them wipe.', 'An arm that springs back breaks it.', 'Push it in until it clicks.', 'Stand back and look.'])('is not this: %s', (text) => expect(asked(text)).toEqual([]));

  test('by its turn or by what it opens', () => {
    expect(asked('Out with it.', { turn: 'drain' })).toEqual(['hot']);
    expect(asked('Up with it.', { access: { name: 'car raised', way: 'open' } })).toEqual(['lifting']);
    expect(asked('Down with it.', { access: { name: 'car raised', way: 'close' } })).toEqual([]);
  });

  test('is none where the step, another step or the whole sheet marks it', () => {
    expect(unmarkedHazards(step('Jack the car up.', { hazards: ['lifting'] }), [])).toEqual([]);
    expect(unmarkedHazards(step('Jack the car up.'), ['lifting'])).toEqual([]);
  });

  test.each(STARTING_SHEETS.map((sheet) => ({ key: sheet.key, sheet })))('none stands on the starting sheet $key', ({ sheet }) => {
    const marked = [...sheet.hazards, ...sheet.steps.flatMap((one) => one.hazards)];
    expect(sheet.steps.flatMap((one) => unmarkedHazards(one, marked).map(({ hazard, words }) => [hazard, words, one.text]))).toEqual([]);
  });

  test('is asked about in the editor, and saved all the same', () => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'c', name: 'Car', power: 'petrol' });
    household.must('item.add', { id: 'i', car: 'c', name: 'My own', interval: { repeat: { months: 12, distance: null } } });
    household.must('sheet.set', { item: 'i', steps: [{ text: 'Jack the car up.' }, { text: 'Look.' }] });
    expect(household.must('sheet.editing', { item: 'i' }).unmarked).toMatchObject([{ step: 'step-1', hazard: 'lifting', said: { text: 'This step speaks of “Jack”, and no step marks “Lifting”. Can it hurt here? Then mark it, and its caution stands beside the step.' } }]);
    household.must('sheet.set', { item: 'i', hazards: ['lifting'], steps: [{ text: 'Jack the car up.' }, { text: 'Look.' }] });
    expect(household.must('sheet.editing', { item: 'i' }).unmarked).toEqual([]);
  });
});
