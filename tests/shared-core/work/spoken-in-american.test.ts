import { describe, expect, test } from 'vitest';
import { americanText } from '../../../shared-core/result/words/american.ts';
import { unmarkedHazards } from '../../../shared-core/work/spoken-hazards.ts';
import { STARTING_SHEETS } from '../../../shared-core/work/starting-sheet.ts';

const hazardsOf = (text: string) => unmarkedHazards({ text, turn: 'work', access: null, hazards: [] }, []).map((one) => one.hazard);
const texts = STARTING_SHEETS.flatMap((sheet) => sheet.steps.map((step) => step.text));

describe('a hazard that a step speaks of', () => {
  test('is heard in American as in British, step by step of every starting sheet', () => {
    const heard = texts.filter((text) => hazardsOf(text).length > 0);
    expect(heard.length).toBeGreaterThan(30);
    expect(texts.filter((text) => hazardsOf(americanText(text)).join() !== hazardsOf(text).join())).toEqual([]);
  });

  test.each([
    { british: 'Petrol in the carburettor.', american: 'Gasoline in the carburetor.', hazards: ['fuel'] },
    { british: 'Fit the brake discs.', american: 'Fit the brake rotors.', hazards: ['brakes'] },
    { british: 'Set it on axle stands.', american: 'Set it on jack stands.', hazards: ['lifting'] },
  ])('$american', ({ british, american, hazards }) => {
    expect([hazardsOf(british), hazardsOf(american)]).toEqual([hazards, hazards]);
  });
});
