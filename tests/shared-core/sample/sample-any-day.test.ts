import { expect, test } from 'vitest';
import { must } from '../../../shared-core/result/assert.ts';
import { standingSample } from './sample-household.ts';

/** The app opens the sample on whatever day it is: the turns of months and years, leap days, and days between. */
const TODAYS = [
  '2026-01-01', '2026-02-28', '2026-03-31', '2026-04-09', '2026-04-30', '2026-05-20', '2026-06-21', '2026-08-20', '2026-10-26', '2026-12-31',
  '2027-03-01', '2027-07-01', '2028-02-28', '2028-03-01', '2029-02-11', '2030-09-15', '2032-02-29',
];

/** States that the sample is there to show on any day. */
const DUTIES_MEANT = {
  'alder-insured': 'probably-passed', 'ember-insured': 'will-pass', 'ember-drive-warranty': 'will-pass', 'wren-insured': 'within',
  'alder-recall-518': 'again', 'ember-recall-2207': 'open', 'heron-recall-31': 'booked',
};
const MEANT = {
  'pip-brake-fluid': 'late', 'pip-air-filter': 'probably-due', 'pip-plugs': 'probably-due', 'pip-oil': 'ahead',
  'alder-fuel-filter': 'late', 'alder-water': 'probably-due', 'alder-oil': 'open', 'alder-pads': 'open',
  'ember-gear-oil': 'ahead', 'heron-leisure-battery': 'late', 'heron-gearbox-oil': 'unknown', 'wren-hoses': 'unknown',
};

test.each(TODAYS)('on %s nothing is refused and the meant cases stand', async (today) => {
  const sample = await standingSample(today);
  const { cars } = sample.ask('due.show', {});
  const states = Object.fromEntries(cars.flatMap((car) => car.windows.map((one) => [one.item, one.state])));
  const doubtful = cars.flatMap((car) => car.doubtful);
  const duties = [...cars.flatMap((car) => car.allowances), ...cars.flatMap((car) => car.recalls.map(({ recall, state }) => ({ id: recall.id, state })))];
  expect(states).toMatchObject(MEANT);
  expect(Object.fromEntries(duties.map((one) => [one.id, one.state]))).toEqual(DUTIES_MEANT);
  expect(Object.entries(states).filter(([, state]) => state === 'late')).toHaveLength(3);
  expect(cars.flatMap((car) => car.obligations).filter((one) => one.late)).toEqual([]);
  expect(cars.flatMap((car) => car.windows).find((one) => one.item === 'pip-brake-fluid')?.lateBy?.months).toBe(12);
  expect(doubtful).toHaveLength(1);
  expect(String(must(doubtful[0]?.repairs[0], 'repair')).slice(1)).toBe(String(doubtful[0]?.value));
});
