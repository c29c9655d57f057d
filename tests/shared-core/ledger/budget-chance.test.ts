import { describe, expect, test } from 'vitest';
import { normalProbability } from '../../../shared-core/fleet/normal-probability.ts';
import { chanceOf, gammaDraw, normalDraw, normalSlices, poissonDraw, shuffle } from '../../../shared-core/ledger/budget-chance.ts';
import { amountDrawn, compoundDrawn, weightsDrawn } from '../../../shared-core/ledger/budget-unplanned.ts';

const DRAWS = 100_000;
const drawn = (draw: () => number, count = DRAWS) => Array.from({ length: count }, draw);
const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / list.length;
const variance = (list: readonly number[]) => mean(list.map((one) => (one - mean(list)) ** 2));

function momentsOf(list: readonly number[]): { readonly mean: number; readonly variance: number } {
  const middle = mean(list);
  return { mean: middle, variance: list.reduce((sum, one) => sum + (one - middle) ** 2, 0) / list.length };
}

describe('chances of a name', () => {
  test('are the same each time, and others for another name', () => {
    const [one, again, other] = ['oil', 'oil', 'oil '].map((name) => drawn(chanceOf(name), 5));
    expect(one).toEqual(again);
    expect(one).not.toEqual(other);
  });

  // Chi squared of 100 cells has 99 degrees of freedom: mean 99, deviation 14; beyond 170 is five deviations. Source: textbook.
  test.each(['a', 'item/pip-oil', 'unplanned'])('of %s fill 0 to 1 evenly, and one says nothing of the next', (name) => {
    const list = drawn(chanceOf(name));
    const cells = new Array<number>(100).fill(0);
    for (const one of list) cells[Math.floor(one * 100)] = (cells[Math.floor(one * 100)] ?? 0) + 1;
    expect(cells.reduce((sum, count) => sum + (count - DRAWS / 100) ** 2 / (DRAWS / 100), 0)).toBeLessThan(170);
    const next = mean(list.slice(1).map((one, at) => (one - 0.5) * ((list[at] ?? 0) - 0.5))) * 12;
    expect(Math.abs(next)).toBeLessThan(5 / Math.sqrt(DRAWS));
  });

  test('of two names that differ in one letter have nothing to do with each other', () => {
    const [one, other] = [drawn(chanceOf('item/a')), drawn(chanceOf('item/b'))];
    expect(Math.abs(mean(one.map((value, at) => (value - 0.5) * ((other[at] ?? 0) - 0.5))) * 12)).toBeLessThan(5 / Math.sqrt(DRAWS));
  });
});

// Moments are textbook (from memory); five standard errors of each.
describe('what is drawn has the moments it must', () => {
  test('normal: mean 0, variance 1, 1 in 10 above 1.2816', () => {
    const list = drawn(((chance) => () => normalDraw(chance))(chanceOf('normal')));
    expect(Math.abs(mean(list))).toBeLessThan(5 / Math.sqrt(DRAWS));
    expect(Math.abs(momentsOf(list).variance - 1)).toBeLessThan(5 * Math.sqrt(2 / DRAWS));
    expect(Math.abs(mean(list.map((one) => (one > 1.2816 ? 1 : 0))) - 0.1)).toBeLessThan(5 * Math.sqrt(0.09 / DRAWS));
  });

  test.each([0.5, 1, 2.5, 12])('gamma of shape %d: mean and variance are the shape', (shape) => {
    const list = momentsOf(drawn(((chance) => () => gammaDraw(chance, shape))(chanceOf(`gamma ${shape}`))));
    expect(Math.abs(list.mean - shape)).toBeLessThan(5 * Math.sqrt(shape / DRAWS));
    // The fourth central moment of a gamma is 3 shape^2 + 6 shape.
    expect(Math.abs(list.variance - shape)).toBeLessThan(5 * Math.sqrt((2 * shape ** 2 + 6 * shape) / DRAWS));
  });

  test.each([0, 0.3, 4, 55])('as often as comes, %d expected: mean and variance are that', (expected) => {
    const list = momentsOf(drawn(((chance) => () => poissonDraw(chance, expected))(chanceOf(`poisson ${expected}`))));
    expect(Math.abs(list.mean - expected)).toBeLessThanOrEqual(5 * Math.sqrt(expected / DRAWS));
    expect(Math.abs(list.variance - expected)).toBeLessThanOrEqual(5 * Math.sqrt((expected + 2 * expected ** 2) / DRAWS));
  });

  test('slices are the middles of equal shares', () => {
    const slices = [...normalSlices(100)];
    for (const [at, z] of slices.entries()) expect(normalProbability(z)).toBeCloseTo((at + 0.5) / 100, 10);
  });

  test('a shuffled order holds each number once, each place as likely', () => {
    const chance = chanceOf('shuffle');
    const order = new Uint16Array(5);
    const first = [0, 0, 0, 0, 0];
    for (let round = 0; round < 20_000; round += 1) {
      shuffle(chance, order);
      expect([...order].sort()).toEqual([0, 1, 2, 3, 4]);
      first[order[0] ?? 0] = (first[order[0] ?? 0] ?? 0) + 1;
    }
    for (const count of first) expect(Math.abs(count - 4000)).toBeLessThan(5 * Math.sqrt(20_000 * 0.2 * 0.8));
  });
});

// E = lambda m, Var = lambda E[X^2] (textbook, from memory).
describe('costs that come by chance', () => {
  const amounts = [3000, 8000, 8000, 41_000];
  const squares = mean(amounts.map((one) => one ** 2));

  test.each([0.4, 3])('%d expected: the sum has the mean and the variance of a compound Poisson process', (expected) => {
    const chance = chanceOf(`compound ${expected}`);
    const even = Float64Array.from([0.25, 0.5, 0.75, 1]);
    const list = momentsOf(drawn(() => compoundDrawn(expected, () => amountDrawn({ amounts, blur: 0 }, even, chance), chance).reduce((sum, one) => sum + one.minor, 0)));
    expect(Math.abs(list.mean - expected * mean(amounts))).toBeLessThan(5 * Math.sqrt((expected * squares) / DRAWS));
    expect(Math.abs(list.variance / (expected * squares) - 1)).toBeLessThan(0.04);
  });

  test('blurred costs keep their mean', () => {
    const chance = chanceOf('blur');
    const list = drawn(() => amountDrawn({ amounts, blur: 0.5 }, Float64Array.from([0.25, 0.5, 0.75, 1]), chance));
    expect(Math.abs(mean(list) / mean(amounts) - 1)).toBeLessThan(5 * Math.sqrt((squares * Math.exp(0.25)) / mean(amounts) ** 2 / DRAWS));
  });

  test('weights of one case rise to 1, and on average each cost has the same', () => {
    const chance = chanceOf('weights');
    const all = Array.from({ length: 20_000 }, () => weightsDrawn(4, chance));
    for (const upTo of all.slice(0, 100)) expect([upTo.at(-1), upTo.every((one, at) => at === 0 || one >= (upTo[at - 1] ?? 0))]).toEqual([1, true]);
    // Dirichlet of ones: the first of four has mean 1/4 and variance 3/80.
    expect(Math.abs(mean(all.map((upTo) => upTo[0] ?? 0)) - 0.25)).toBeLessThan(5 * Math.sqrt(3 / 80 / 20_000));
    expect(Math.abs(variance(all.slice(0, 2000).map((upTo) => upTo[0] ?? 0)) - 3 / 80)).toBeLessThan(0.005);
  });
});
