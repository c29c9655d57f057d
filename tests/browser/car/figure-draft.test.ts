import { describe, expect, test } from 'vitest';
import { nextMissing, sourcesOf } from '../../../renderer/car/card/card-order.ts';
import { comparedFigure, composeFigure, figureDraft, threadText, type FigureDraft } from '../../../renderer/car/card/figure-draft.ts';
import { newOwnFigure } from '../../../renderer/car/card/own-figure.ts';
import { unitToBegin } from '../../../renderer/car/card/figure-units.ts';
import { knownFigure } from '../../../shared-core/fleet/known-figures.ts';
import type { CardView, FigureView } from '../../../shared-core/views/card-view.ts';

const EMPTY: FigureView = { ...newOwnFigure(), own: false };
const figure = (key: string, change: Partial<FigureView> = {}): FigureView => ({ ...EMPTY, key, name: key, kind: knownFigure(key)?.kind ?? 'text', ...change });
const pressure = figure('tyre-pressure-front', { entered: true, value: { kind: 'pressure', typed: { value: 32, unit: 'psi' }, pascals: 220_632 }, source: 'sticker' });
const torque = figure('wheel-torque', {
  entered: true, sure: true, source: 'handbook',
  value: { kind: 'torque', typed: { value: 11, unit: 'Nm' }, millinewtonMetres: 11_000, on: { joint: 'bolt', thread: 'M12x1.5', strength: null, seat: null } },
});
const CARD = { groups: [
  { group: 'tyres', name: 'Tyres', figures: [pressure, figure('tyre-pressure-rear')] },
  { group: 'torques', name: 'Torques', figures: [torque, figure('oil-drain-torque', { source: 'handbook' })] },
] } as unknown as CardView;

/** Source for all: worked by hand from the stated rule. */
describe('the form of a figure', () => {
  const compose = (of: FigureView, change: Partial<FigureDraft>) => composeFigure({ ...figureDraft(CARD, of), ...change }, 'pip', of);

  test('opens in the unit of the figure, else of the others of its kind, else in the first', () => {
    expect([unitToBegin(CARD, pressure), unitToBegin(CARD, figure('tyre-pressure-rear')), unitToBegin(CARD, figure('coolant-quantity')), unitToBegin(CARD, figure('fuel'))]).toEqual(['psi', 'psi', 'l', '']);
  });

  test('is read as the figure that it describes', () => {
    expect(compose(figure('oil-drain-torque'), { value: '30,5', thread: 'm14 × 1,5', source: ' ', strength: '8.8' })).toEqual({
      ok: true, value: { car: 'pip', key: 'oil-drain-torque', name: null, value: 30.5, unit: 'Nm', thread: 'M14x1.5', strength: '8.8', seat: null, source: null, paper: null, note: '', sure: false },
    });
    expect(compose(figure('fuel'), { value: '95' })).toMatchObject({ ok: true, value: { value: '95', unit: null } });
  });

  test('is refused before it is sent where the number is none', () => {
    expect(compose(pressure, { value: 'about 2' })).toMatchObject({ ok: false, refusal: { code: 'not-a-number', path: ['value'], values: { example: '4.1' } } });
  });

  test.each([
    { case: 'untouched', change: {}, sure: true },
    { case: 'with another source', change: { source: 'sticker' }, sure: true },
    { case: 'with another value', change: { value: '110' }, sure: false },
    { case: 'in another unit', change: { unit: 'kgf-m' }, sure: false },
    { case: 'on another thread', change: { thread: 'M14' }, sure: false },
  ])('a compared torque, $case, stays compared: $sure', ({ change, sure }) => {
    expect(compose(torque, change)).toMatchObject({ ok: true, value: { sure } });
  });

  test('a torque of one’s own keeps what it is on', () => {
    const own: FigureView = { ...torque, key: 'mine', own: true, value: { kind: 'torque', typed: { value: 11, unit: 'Nm' }, millinewtonMetres: 11_000, on: { joint: 'soft', thread: null, strength: null, seat: null } } };
    expect(compose(own, { value: '12' })).toMatchObject({ ok: true, value: { joint: 'soft', name: 'wheel-torque' } });
    expect(compose(torque, {})).not.toHaveProperty('value.joint');
  });

  test('once compared, a figure is stated again as it stands', () => {
    expect(comparedFigure('pip', torque)).toEqual({ car: 'pip', key: 'wheel-torque', name: null, value: 11, unit: 'Nm', source: 'handbook', paper: null, note: '', joint: 'bolt', thread: 'M12x1.5', strength: null, seat: null, sure: true });
    expect(comparedFigure('pip', EMPTY)).toBeNull();
  });

  test.each([['m12 x 1.5', 'M12x1.5'], ['M12×1,25', 'M12x1.25'], [' M8 ', 'M8'], ['3/8 UNF', '3/8UNF']])('a thread typed %s is written %s', (typed, written) => {
    expect(threadText(typed)).toBe(written);
  });
});

describe('the order of a card', () => {
  test('goes from one missing figure to the next, over groups, and ends', () => {
    expect([nextMissing(CARD, null), nextMissing(CARD, 'tyre-pressure-rear'), nextMissing(CARD, 'oil-drain-torque')].map((one) => one?.key)).toEqual(['tyre-pressure-rear', 'oil-drain-torque', undefined]);
  });

  test('names each source once', () => expect(sourcesOf(CARD)).toEqual(['sticker', 'handbook']));

  test('a new figure of one’s own has a key of its own', () => expect(newOwnFigure().key).not.toBe(newOwnFigure().key));
});
