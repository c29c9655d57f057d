import { describe, expect, test } from 'vitest';
import { cardFigures } from '../../../shared-core/fleet/card-figure.ts';
import { STARTING_SETS } from '../../../shared-core/care/starting-set.ts';
import { FIGURE_GROUPS, figuresFor, KNOWN_FIGURES } from '../../../shared-core/fleet/known-figures.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { hasWords } from '../../../shared-core/result/words/say.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

function withPip(power: 'petrol' | 'electric' | 'hybrid' = 'petrol'): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip', power });
  household.must('car.add', { id: 'wren', name: 'Wren', power });
  return household;
}

const set = (household: MemoryHousehold, request: Omit<RequestOf<'card.set'>, 'car'>) => household.must('card.set', { car: 'Pip', ...request });

describe('a figure', () => {
  test.each([
    { key: 'engine-oil-quantity', value: 4.3, unit: 'l', kept: { kind: 'volume', typed: { value: 4.3, unit: 'l' }, microlitres: 4_300_000 } },
    { key: 'tyre-pressure-front', value: 32, unit: 'psi', kept: { kind: 'pressure', typed: { value: 32, unit: 'psi' }, pascals: 220_632 } },
    { key: 'spark-plug-gap', value: 0.028, unit: 'in', kept: { kind: 'depth', typed: { value: 0.028, unit: 'in' }, nanometres: 711_200 } },
    { key: 'locking-nut-key', value: ' In the glovebox ', unit: null, kept: { kind: 'text', text: 'In the glovebox' } },
    { key: 'wheel-torque', value: 80, unit: 'lbf-ft', kept: { kind: 'torque', typed: { value: 80, unit: 'lbf-ft' }, millinewtonMetres: 108_465, on: { joint: 'bolt', thread: null, strength: null, seat: null } } },
  ])('$key is kept as typed, and whole beside it', ({ key, value, unit, kept }) => {
    const { figure, question } = set(withPip(), { key, value, unit, source: 'Handbook, page 201' });
    expect(figure).toEqual({ id: 'new-1', car: 'pip', key, name: null, value: kept, source: 'Handbook, page 201', paper: null, note: '', sure: false });
    expect(question).toBeNull();
  });

  test('entered anew stands under the same id; another car has its own', () => {
    const household = withPip();
    const { figure } = set(household, { key: 'battery', value: '60 Ah' });
    household.must('card.set', { car: 'wren', key: 'battery', value: '44 Ah' });
    expect(set(household, { key: 'battery', value: '70 Ah' }).figure.id).toBe(figure.id);
    expect(household.facts().all(cardFigures).map(({ car, value }) => [car, value.kind === 'text' && value.text])).toEqual([['pip', '70 Ah'], ['wren', '44 Ah']]);
  });

  test('of one\'s own has a name and any unit', () => {
    const household = withPip();
    expect(set(household, { key: 'roof-load', name: 'Roof load', value: '75 kg' }).figure).toMatchObject({ name: 'Roof load', value: { kind: 'text' } });
    expect(set(household, { key: 'sump-guard', name: 'Sump guard', value: 22, unit: 'Nm', thread: 'M8', strength: '8.8' }).figure.value).toMatchObject({ kind: 'torque', on: { joint: 'bolt', thread: 'M8' } });
  });

  test('a torque far from the band is kept and asked about, until the keeper is sure', () => {
    const household = withPip();
    const slip = set(household, { key: 'wheel-torque', value: 11, unit: 'Nm', thread: 'M12x1.5' });
    expect([slip.question?.key, slip.figure.value]).toEqual(['torque-low-in', expect.objectContaining({ millinewtonMetres: 11_000 })]);
    expect(set(household, { key: 'wheel-torque', value: 11, unit: 'Nm', thread: 'M12x1.5', sure: true }).question).toBeNull();
    expect(set(household, { key: 'wheel-torque', value: 110, unit: 'Nm', thread: 'M12x1.5' }).question).toBeNull();
  });

  test('a drain plug and a spark plug are not held to the band of a bolt', () => {
    const household = withPip();
    expect(set(household, { key: 'oil-drain-torque', value: 30, unit: 'Nm', thread: 'M14x1.5' }).question).toBeNull();
    expect(set(household, { key: 'spark-plug-torque', value: 25, unit: 'Nm', thread: 'M14x1.25' }).question).toBeNull();
    expect(set(household, { key: 'spark-plug-torque', value: 85, unit: 'Nm', thread: 'M12x1.25' }).question?.key).toBe('torque-high');
  });

  test.each([
    { case: 'an unknown car', request: { car: 'nobody', key: 'battery', value: 'x' }, code: 'unknown-car' },
    { case: 'a pressure in litres', request: { key: 'tyre-pressure-front', value: 2, unit: 'l' }, code: 'figure-is-pressure' },
    { case: 'a quantity without a unit', request: { key: 'engine-oil-quantity', value: 4.3 }, code: 'figure-is-volume' },
    { case: 'a quantity in words', request: { key: 'engine-oil-quantity', value: 'four litres' }, code: 'figure-is-volume' },
    { case: 'words with a unit', request: { key: 'engine-oil-quantity', value: 'four', unit: 'l' }, code: 'figure-not-a-number' },
    { case: 'a place in millimetres', request: { key: 'jacking-points', value: 12, unit: 'mm' }, code: 'figure-is-text' },
    { case: 'a number where words belong', request: { key: 'jacking-points', value: 12 }, code: 'figure-without-unit' },
    { case: 'a torque of 0', request: { key: 'wheel-torque', value: 0, unit: 'Nm' }, code: 'not-a-torque' },
    { case: 'a quantity below 0', request: { key: 'coolant-quantity', value: -1, unit: 'l' }, code: 'not-a-volume' },
    { case: 'a pressure above any', request: { key: 'tyre-pressure-front', value: 2200, unit: 'bar' }, code: 'not-a-pressure' },
    { case: 'a gap below 0', request: { key: 'spark-plug-gap', value: -0.7, unit: 'mm' }, code: 'not-a-depth' },
    { case: 'a unit of nothing', request: { key: 'wheel-torque', value: 110, unit: 'N' }, code: 'unknown-figure-unit' },
    { case: 'a thread of inches', request: { key: 'wheel-torque', value: 110, unit: 'Nm', thread: '1/2-20' }, code: 'not-a-thread' },
    { case: 'an unknown class', request: { key: 'wheel-torque', value: 110, unit: 'Nm', strength: '9.9' }, code: 'unknown-strength' },
    { case: 'one\'s own without a name', request: { key: 'roof-load', value: '75 kg' }, code: 'figure-without-name' },
    { case: 'another name for a known one', request: { key: 'battery', name: 'Accumulator', value: '60 Ah' }, code: 'figure-has-name' },
    { case: 'a paper that nobody kept', request: { key: 'battery', value: '60 Ah', paper: 'a'.repeat(64) }, code: 'unknown-paper' },
    { case: 'control characters', request: { key: 'battery', value: '60\u0000Ah' }, code: 'control-characters' },
    { case: 'words without end', request: { key: 'battery', value: 'x'.repeat(201) }, code: 'text-too-long' },
  ])('$case is refused: $code', ({ request, code }) => {
    const household = withPip();
    const before = household.entries.length;
    expect(household.call('card.set', { car: 'pip', ...request } as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(before);
  });

  test('engine oil of an electric car is refused, the switch of the high voltage is not', () => {
    const household = withPip('electric');
    expect(household.call('card.set', { car: 'pip', key: 'engine-oil-quantity', value: 4, unit: 'l' })).toMatchObject({ ok: false, refusal: { code: 'figure-not-of-car' } });
    expect(set(household, { key: 'high-voltage-off', value: 'Orange loop under the bonnet' }).figure.key).toBe('high-voltage-off');
    expect(withPip().call('card.set', { car: 'pip', key: 'high-voltage-off', value: 'x' })).toMatchObject({ ok: false, refusal: { code: 'figure-not-of-car' } });
  });

  test('taken away it is not entered any more, and can be entered again', () => {
    const household = withPip();
    set(household, { key: 'battery', value: '60 Ah' });
    expect(household.must('card.clear', { car: 'pip', key: 'battery' }).figure.value).toEqual({ kind: 'text', text: '60 Ah' });
    expect(household.facts().all(cardFigures)).toEqual([]);
    expect(household.call('card.clear', { car: 'pip', key: 'battery' })).toMatchObject({ ok: false, refusal: { code: 'figure-not-entered' } });
    set(household, { key: 'battery', value: '60 Ah' });
    expect(household.facts().all(cardFigures)).toHaveLength(1);
  });
});

describe('the known figures', () => {
  test('are known once each, in the order of the groups, with words for where they are missed', () => {
    expect(new Set(KNOWN_FIGURES.map((figure) => figure.key)).size).toBe(KNOWN_FIGURES.length);
    const order = KNOWN_FIGURES.map((figure) => FIGURE_GROUPS.indexOf(figure.group));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(KNOWN_FIGURES.flatMap((figure) => figure.missed).filter((where) => !hasWords(`missed-${where}`))).toEqual([]);
    expect(FIGURE_GROUPS.filter((group) => !hasWords(`card-group-${group}`))).toEqual([]);
  });

  test('a torque says what it is on, nothing else does', () => {
    for (const figure of KNOWN_FIGURES) expect(figure.joint !== null, figure.key).toBe(figure.kind === 'torque');
  });

  test('name items by the names of the starting sets', () => {
    const names = new Set(STARTING_SETS.flatMap((one) => one.items.map((item) => item.name)));
    expect(KNOWN_FIGURES.flatMap((figure) => figure.items).filter((name) => !names.has(name))).toEqual([]);
  });

  test('an electric car misses nothing of an engine', () => {
    expect(figuresFor({ power: 'electric' }).filter((figure) => /engine oil|spark|fuel$|filter/i.test(figure.name))).toEqual([]);
    expect(figuresFor({ power: 'diesel' }).some((figure) => /spark/i.test(figure.name))).toBe(false);
  });
});
