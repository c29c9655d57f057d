import { beforeAll, describe, expect, test } from 'vitest';
import { must } from '../../../shared-core/result/assert.ts';
import { standingSample, type StandingSample } from './sample-household.ts';

/** Source for all: the story of the sample; every figure in it is invented. */
describe('data cards and services of the sample', () => {
  let sample: StandingSample;
  beforeAll(async () => {
    sample = await standingSample('2026-11-25');
  });
  const card = (car: string) => sample.ask('card.show', { car });
  const figures = (car: string) => card(car).groups.flatMap((group) => group.figures);

  test("Pip's card is nearly full, with every group, one figure without a source and one unlikely torque", () => {
    const { entered, missing, withoutSource, groups } = card('pip');
    expect(groups.map((group) => group.group)).toEqual(['fluids', 'tyres', 'torques', 'raising', 'electrical', 'fits', 'own']);
    expect(entered).toBeGreaterThan(35);
    expect(missing).toBeGreaterThan(2);
    expect(missing).toBeLessThan(10);
    expect(withoutSource).toBe(1);
    expect(figures('pip').filter((figure) => figure.question !== null).map((figure) => [figure.key, figure.question?.code])).toEqual([['wheel-torque', 'torque-low-in']]);
  });

  test('some of its figures stand on a sheet kept as a paper', () => {
    expect(figures('pip').filter((figure) => figure.paper !== null).map((figure) => figure.key)).toHaveLength(4);
    expect(sample.ask('car.show', { car: 'pip' }).papers.map((paper) => paper.name)).toContain('Sample sheet of tyre pressures, Pip.pdf');
  });

  test('other cards are less full, one of them in old units, some empty', () => {
    expect(['alder', 'wren', 'ember', 'heron'].map((car) => card(car).entered)).toEqual([8, 8, 0, 0]);
    expect(figures('wren').find((figure) => figure.key === 'engine-oil-quantity')?.text).toBe('7.5 imp pt');
  });

  test("Alder's four-year service: half at home, half at a garage, one line by nobody, one to be watched", () => {
    const view = sample.ask('coverage.show', { car: 'alder', plan: 'alder-four-years' });
    expect(view.counts).toEqual({ lines: 12, done: 9, lookedAt: 1, notDone: 1, nobody: 1 });
    expect(view.lines.find((line) => line.state === 'nobody')?.name).toBe('fuel filter');
    expect(new Set(view.by.map((one) => one.place))).toEqual(new Set(['home', 'garage']));
    expect(must(view.by.find((one) => one.place === 'home'), 'home').lines).toBeGreaterThan(3);
    expect(view.watched.map((seen) => seen.id)).toEqual(['alder-front-pads']);
    expect(view.extras.length).toBeGreaterThan(1);
  });

  test("Pip's has just been named and nobody has begun it", () => {
    expect(sample.ask('coverage.show', { car: 'pip', plan: 'pip-four-years' }).counts).toMatchObject({ lines: 9, nobody: 9 });
  });
});
