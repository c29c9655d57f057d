import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { knownFigure } from '../../../shared-core/fleet/known-figures.ts';
import { STARTING_SETS } from '../../../shared-core/care/starting-set.ts';
import { say } from '../../../shared-core/result/words/say.ts';
import { figuresOf } from '../../../shared-core/work/figure-refs.ts';
import { hazardSchema, type Hazard } from '../../../shared-core/work/hazard.ts';
import { sheetFor, STARTING_SHEETS, startingSheet, type StartingSheet } from '../../../shared-core/work/starting-sheet.ts';
import { turnOf } from '../../../shared-core/work/turn-of.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

const FOLDER = 'shared-core/work/starting-sheets';
const byKey = STARTING_SHEETS.map((sheet) => ({ key: sheet.key, sheet }));
const hazardsOf = (sheet: StartingSheet) => new Set<Hazard>([...sheet.hazards, ...sheet.steps.flatMap((step) => step.hazards)]);
const wordsOf = (sheet: StartingSheet) => [sheet.name, sheet.reset ?? '', ...sheet.checks, ...sheet.followUps.map((one) => one.text), ...sheet.steps.flatMap((step) => [step.text, ...step.tools, ...step.fluids.map((one) => one.name), ...step.torques.map((one) => one.name ?? '')])];

/** What hurts in each, written down apart from the sheets. Source: common practice and official guidance, from memory. */
const EXPECTED: Readonly<Record<string, readonly Hazard[]>> = {
  'engine-oil-and-filter': ['lifting', 'hot', 'used-oil', 'running-engine'], 'spark-plugs': ['ignition', 'hot'], coolant: ['lifting', 'hot', 'coolant', 'running-engine'], 'drive-belts': ['running-engine'], 'timing-belt': ['timing'],
  'fluid-levels': ['hot', 'coolant', 'brake-fluid'], 'fuel-filter': ['fuel', 'fuel-pressure', 'running-engine'], 'water-from-fuel-filter': ['fuel'], 'glow-plugs': ['hot', 'battery'], 'gearbox-oil': ['lifting', 'hot', 'used-oil'],
  'steering-and-suspension': ['lifting', 'springs'], 'brake-fluid': ['lifting', 'brakes', 'brake-fluid'], 'brake-pads-look': ['lifting', 'brakes'], 'brake-pads': ['lifting', 'brakes', 'brake-fluid'], 'brake-discs': ['lifting', 'brakes', 'brake-fluid', 'heavy'],
  'brake-hoses': ['lifting', 'brakes', 'brake-fluid'], 'drum-linings': ['lifting', 'brakes', 'old-linings', 'springs'], 'wheels-changed': ['lifting', 'heavy'], 'wheel-bearings': ['lifting', 'brakes', 'old-linings'], 'tyre-sealant': ['sealant'],
  'cabin-filter': ['airbag'], 'battery-check': ['battery'], 'battery-replace': ['battery', 'heavy'], 'points-and-plugs': ['ignition', 'running-engine'], 'chassis-grease': ['lifting'], 'valve-clearances': ['running-engine'], 'fuel-hoses': ['fuel'],
  'high-voltage-look': ['high-voltage'], 'high-voltage-coolant': ['high-voltage', 'coolant'], 'reduction-gear-oil': ['high-voltage', 'used-oil', 'lifting'], 'air-conditioning': ['refrigerant'], 'near-airbag': ['airbag', 'battery'], 'gas-hoses': ['gas'],
};

/** Words that speak of something dangerous, each with the hazard that must then be named. */
const SPEAKS_OF: readonly { readonly words: RegExp; readonly hazard: Hazard }[] = [
  { words: /\bjack|onto stands|raise the car|lower the car/i, hazard: 'lifting' }, { words: /\bcaliper|\bdrum off|brake pad|pedal\b/i, hazard: 'brakes' }, { words: /airbag/i, hazard: 'airbag' },
  { words: /orange cable|high-voltage/i, hazard: 'high-voltage' }, { words: /\bfuel can\b|can for fuel|smell of fuel|clean fuel/i, hazard: 'fuel' }, { words: /asbestos/i, hazard: 'old-linings' }, { words: /refrigerant/i, hazard: 'refrigerant' },
];

describe('the starting sheets', () => {
  test('are at least twenty, each with its own key and name', () => {
    expect(STARTING_SHEETS.length).toBeGreaterThanOrEqual(20);
    for (const field of ['key', 'name'] as const) expect(new Set(STARTING_SHEETS.map((sheet) => sheet[field])).size).toBe(STARTING_SHEETS.length);
  });

  test.each([
    'engine-oil-and-filter', 'engine-air-filter', 'cabin-filter', 'spark-plugs', 'brake-fluid', 'coolant', 'brake-pads', 'brake-discs', 'wheels-changed', 'tyre-look', 'battery-check', 'battery-replace', 'wiper-blades', 'lights', 'drive-belts', 'timing-belt',
    'fuel-filter', 'water-from-fuel-filter', 'glow-plugs', 'gearbox-oil', 'points-and-plugs', 'chassis-grease', 'valve-clearances', 'brake-hoses', 'drum-linings', 'high-voltage-look', 'air-conditioning', 'near-airbag', 'tyre-sealant', 'gas-hoses',
  ])('%s is there', (key) => {
    expect(startingSheet(key)?.steps.length).toBeGreaterThan(2);
  });

  test.each(['timing-belt', 'brake-hoses', 'brake-pads', 'drum-linings'])('%s is named as work for a skilled person', (key) => {
    expect(startingSheet(key)?.by).toBe('skilled');
  });

  test.each(['high-voltage-look', 'air-conditioning', 'near-airbag', 'gas-hoses', 'reduction-gear-oil', 'high-voltage-coolant'])('%s is named as work for a licensed person', (key) => {
    expect(startingSheet(key)?.by).toBe('licensed');
  });

  // "12 V" names a kind of battery. The one number of a sheet is when to look again, which no maker sets: common practice, no source.
  test.each(byKey)('$key holds no figure: no digit in its words', ({ sheet }) => {
    for (const words of wordsOf(sheet)) expect(words.replaceAll('12 V', '')).not.toMatch(/\d/);
  });

  test('the files have digits in follow-ups alone', () => {
    for (const file of readdirSync(FOLDER)) {
      const text = readFileSync(`${FOLDER}/${file}`, 'utf8').replaceAll(/"days": \d+, "distance": (null|\{"value": \d+, "unit": "km"\})/g, '').replaceAll('12 V', '');
      expect([file, /\d/.exec(text)]).toEqual([file, null]);
    }
  });

  test.each(byKey)('$key takes each torque, fluid and quantity from the data card', ({ sheet }) => {
    for (const step of sheet.steps) {
      expect(step.torques.every((one) => one.by === 'figure')).toBe(true);
      for (const { ref, kind } of figuresOf({ ...step })) {
        const known = knownFigure(ref.figure);
        if (known === null) expect([ref.figure, ref.name]).toEqual([ref.figure, expect.stringMatching(/\w/)]);
        else expect([ref.figure, kind ?? known.kind]).toEqual([ref.figure, known.kind]);
      }
    }
  });
});

describe('cautions', () => {
  test.each(byKey)('$key has the hazards that it is expected to have', ({ key, sheet }) => {
    for (const hazard of EXPECTED[key] ?? []) expect([key, hazard, hazardsOf(sheet).has(hazard)]).toEqual([key, hazard, true]);
  });

  test.each(byKey)('$key names the hazard of whatever its words speak of', ({ key, sheet }) => {
    for (const { words, hazard } of SPEAKS_OF) if (wordsOf(sheet).some((text) => words.test(text))) expect([key, hazard, hazardsOf(sheet).has(hazard)]).toEqual([key, hazard, true]);
  });

  test.each(byKey)('$key says at the step itself where the car is raised, lowered or hangs on stands', ({ sheet }) => {
    const lifting = sheet.steps.filter((step) => /onto stands|lower the car|below the sill|chock the wheels/i.test(step.text) || ['wheels off', 'undertray'].includes(step.access?.name ?? ''));
    for (const step of lifting) expect([step.text, step.hazards.includes('lifting')]).toEqual([step.text, true]);
  });

  test.each(byKey)('$key that raises the car, drains or runs the engine says so', ({ key, sheet }) => {
    const has = hazardsOf(sheet);
    if (sheet.steps.some((step) => step.access?.name === 'car raised' || step.access?.name === 'wheels off')) expect([key, has.has('lifting')]).toEqual([key, true]);
    if (sheet.steps.some((step) => step.turn === 'drain')) expect([key, ['hot', 'fuel', 'coolant', 'used-oil'].some((one) => has.has(one as Hazard))]).toEqual([key, true]);
    for (const [at, step] of sheet.steps.entries()) if (['run', 'before'].includes(turnOf(sheet.steps, at)) && /engine|start|idle/i.test(step.text)) expect([key, step.text, has.has('running-engine')]).toEqual([key, step.text, true]);
  });

  test.each(byKey.filter(({ sheet }) => sheet.steps.some((step) => step.turn === 'drain') && sheet.key !== 'water-drained'))('$key says where what it drains belongs', ({ sheet }) => {
    for (const step of sheet.steps.filter((one) => one.turn === 'drain')) expect([step.text, step.disposal.length > 0]).toEqual([step.text, true]);
  });

  test.each(byKey)('$key shows its cautions before its first step, on an item and without a sheet of its own too', ({ key, sheet }) => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'c', name: 'Car', power: sheet.power?.[0] ?? 'petrol' });
    household.must('item.add', { id: 'i', car: 'c', name: sheet.items[0] ?? '', interval: { repeat: { months: 12, distance: null } } });
    const without = household.must('sheet.show', { item: 'i' });
    household.must('sheet.start', { item: 'i', from: key });
    const view = household.must('sheet.show', { item: 'i' });
    expect(view.hasSheet).toBe(true);
    for (const shown of [without, view]) {
      expect(shown.cautions[0]?.said.code).toBe('caution-maker-first');
      expect(Object.keys(shown).indexOf('cautions')).toBeLessThan(Object.keys(shown).indexOf('job'));
      expect(new Set(shown.cautions.flatMap((one) => one.hazard ?? []))).toEqual(hazardsOf(sheet));
    }
    expect(view.job.blocks.flatMap((block) => block.steps.flatMap((step) => step.of)).length).toBe(sheet.steps.length);
  });

  test.each(byKey)('$key written anew without a hazard keeps its cautions, and what is left over', ({ sheet }) => {
    const household = memoryHousehold();
    household.must('car.add', { id: 'c', name: 'Car', power: sheet.power?.[0] ?? 'petrol' });
    household.must('item.add', { id: 'i', car: 'c', name: sheet.items[0] ?? '', interval: { repeat: { months: 12, distance: null } } });
    const before = household.must('sheet.show', { item: 'i' });
    household.must('sheet.set', { item: 'i', steps: [{ text: 'As I always do it.' }] });
    const after = household.must('sheet.show', { item: 'i' });
    expect(after.cautions).toEqual(before.cautions);
    expect(new Set(after.cautions.flatMap((one) => one.hazard ?? []))).toEqual(hazardsOf(sheet));
    expect(after.disposal).toEqual(before.disposal);
  });

  test('no caution names a figure: how long to wait at an airbag is the maker\'s', () => {
    for (const hazard of hazardSchema.options) {
      const sentence = say({ key: `caution-${hazard}`, values: {} });
      expect([hazard, /\d/.test(sentence)]).toEqual([hazard, false]);
      expect(say({ key: `hazard-${hazard}`, values: {} })).toMatch(/\w/);
    }
    expect(say({ key: 'caution-airbag', values: {} })).toMatch(/as the car’s maker says/);
    expect(say({ key: 'caution-airbag', values: {} })).not.toMatch(/minute|second|hour/);
  });

  test.each([['high-voltage', /licensed/], ['airbag', /licensed/], ['gas', /licensed/], ['refrigerant', /certified/], ['old-linings', /licensed/]] as const)('%s names who may', (hazard, who) => {
    expect(say({ key: `caution-${hazard}`, values: {} })).toMatch(who);
  });
});

describe('a sheet for an item', () => {
  const named = STARTING_SETS.flatMap((set) => set.items.map((item) => ({ set: set.key, name: item.name })));

  test.each([
    { name: 'engine oil and filter', power: 'petrol', key: 'engine-oil-and-filter' }, { name: 'Engine Oil & Filter', power: 'diesel', key: 'engine-oil-and-filter' }, { name: 'engine oil and filter', power: 'electric', key: null },
    { name: 'fuel filter', power: 'diesel', key: 'fuel-filter' }, { name: 'fuel filter', power: 'petrol', key: null }, { name: 'rubber brake hoses', power: 'petrol', key: 'brake-hoses' }, { name: 'Polish', power: 'petrol', key: null },
    { name: 'New starter battery', power: 'petrol', key: 'battery-replace' }, { name: 'starter battery', power: 'petrol', key: 'battery-check' }, { name: 'Brake pads and discs', power: 'diesel', key: 'brake-pads-look' }, { name: 'new front brake pads', power: 'diesel', key: 'brake-pads' },
  ] as const)('$name on a $power car: $key', ({ name, power, key }) => {
    expect(sheetFor(name, { power })?.key ?? null).toBe(key);
  });

  test('most items of the starting sets have one', () => {
    const with_ = named.filter(({ name }) => STARTING_SHEETS.some((sheet) => sheet.items.includes(name)));
    expect(with_.length / named.length).toBeGreaterThan(0.6);
  });
});
