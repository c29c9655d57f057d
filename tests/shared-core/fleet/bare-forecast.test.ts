import { describe, expect, test } from 'vitest';
import { fromDayNumber } from '../../../shared-core/calendar/local-date.ts';
import { bareForecast, type BareForecastOptions } from '../../../shared-core/fleet/bare-forecast.ts';
import { parseOdometerLog } from '../../../shared-core/fleet/odometer-log.ts';
import type { Hemisphere } from '../../../shared-core/fleet/usage-season.ts';
import { dayOf, usageVectors, vectorReadings } from './usage-examples.ts';

const FOUR = 'date,km\n2023-01-10,50000\n2023-04-12,53000\n2023-09-01,58200\n2024-01-08,61500\n';
const ON = fromDayNumber(dayOf('2024-03-01'));
const OPTIONS: BareForecastOptions = { on: ON, addKm: 5000, declaredKmAYear: null, laidUp: [], hemisphere: 'north' };

function forecast(csv: string, options: Partial<BareForecastOptions> = {}) {
  const log = parseOdometerLog(csv);
  if (!log.ok) throw new Error(log.refusal.code);
  return bareForecast(log.value, { ...OPTIONS, ...options });
}

function answer(csv: string, options: Partial<BareForecastOptions> = {}) {
  const told = forecast(csv, options);
  if (!told.ok) throw new Error(told.refusal.code);
  return told.value.answer;
}

describe('the answer', () => {
  test('has exactly this shape', () => {
    // Source: vector A of the house measurement; the odometer after 53 days by its formulas (recomputed in another language).
    expect(answer(FOUR)).toEqual({
      ratePerSeasonDay: 31.0198,
      exposure: 195.521,
      lastReading: { date: '2024-01-08', km: 61_500 },
      odometer: { low: 62_408, likely: 63_022, high: 64_012 },
      due: { earliest: '2024-04-25', likely: '2024-06-20', latest: '2024-09-02' },
      setAside: [],
    });
  });

  test.each(usageVectors)('$case', (vector) => {
    const csv = vectorReadings(vector.readings).map(({ day, km }) => `${fromDayNumber(day)},${km}`).join('\n');
    const { declaredKmAYear, laidUp, addKm } = vector;
    const told = answer(csv, { declaredKmAYear, laidUp, addKm, hemisphere: vector.hemisphere as Hemisphere });
    expect(told.due).toEqual(vector.due);
    expect(told.ratePerSeasonDay.toFixed(4)).toBe(vector.rate);
    expect(told.exposure.toFixed(3)).toBe(vector.exposure);
  });

  test('is null where nothing is foreseeable within five years', () => {
    expect(answer(FOUR, { addKm: 200_000 }).due).toEqual({ earliest: null, likely: null, latest: null });
  });

  test('nothing to add is due on the day of the last reading', () => {
    expect(answer(FOUR, { addKm: 0 }).due).toEqual({ earliest: '2024-01-08', likely: '2024-01-08', latest: '2024-01-08' });
  });

  test('tells beside it what became of a declared distance', () => {
    const prior = (declaredKmAYear: number | null) => {
      const told = forecast(FOUR, { declaredKmAYear });
      return told.ok ? told.value.prior : told.refusal;
    };
    expect([null, 12_000, 120_000].map(prior)).toEqual(['generic', 'declared', 'declared-set-aside']);
    expect(answer(FOUR, { declaredKmAYear: 120_000 })).toEqual(answer(FOUR));
  });
});

describe('readings in order, each judged by those before it', () => {
  test.each([
    { case: 'a digit left out', extra: '2023-06-01,5500', code: 'decrease' },
    { case: 'a digit too many', extra: '2023-06-01,555000', code: 'too-high' },
    { case: 'after today', extra: '2024-03-02,62500', code: 'after-today' },
  ])('$case is set aside and moves nothing', ({ extra, code }) => {
    const [date, km] = extra.split(',');
    expect(answer(FOUR + extra)).toEqual({ ...answer(FOUR), setAside: [{ date, km: Number(km), code }] });
  });

  test('on the day itself is not after today', () => {
    expect(answer(`${FOUR}2024-03-01,62500`)).toMatchObject({ lastReading: { date: '2024-03-01', km: 62_500 }, setAside: [] });
  });

  test('several are told in order of day', () => {
    const told = answer(`${FOUR}2023-10-01,580\n2023-06-01,5500\n2023-11-01,600000`);
    expect(told.setAside.map(({ date, code }) => [date, code])).toEqual([
      ['2023-06-01', 'decrease'], ['2023-10-01', 'decrease'], ['2023-11-01', 'too-high'],
    ]);
  });

  test('of a pair on one day the higher counts, and neither is set aside, in whatever order they stand', () => {
    expect(answer(`${FOUR}2024-01-08,61400`)).toEqual(answer(FOUR));
    expect(answer(FOUR.replace('2024-01-08', '2024-01-08,61400\n2024-01-08'))).toEqual(answer(FOUR));
  });

  test('a slip on the day of a good reading leaves the good one', () => {
    expect(answer(`${FOUR}2024-01-08,615000`)).toEqual({ ...answer(FOUR), setAside: [{ date: '2024-01-08', km: 615_000, code: 'too-high' }] });
  });

  test('the order of lines does not matter', () => {
    const [header, ...lines] = FOUR.trim().split('\n');
    expect(answer([header, ...lines.reverse()].join('\n'))).toEqual(answer(FOUR));
  });
});

describe('what is refused', () => {
  test.each([
    { case: 'all readings after today', options: { on: fromDayNumber(dayOf('2022-12-31')) }, code: 'no-reading', values: { on: '2022-12-31' } },
    { case: 'a negative distance to add', options: { addKm: -1 }, code: 'not-a-distance', values: { value: '-1' } },
    { case: 'no number to add', options: { addKm: Number.NaN }, code: 'not-a-distance', values: { value: 'NaN' } },
    { case: 'nothing a year', options: { declaredKmAYear: 0 }, code: 'not-a-distance', values: { value: '0' } },
    { case: 'a thirteenth month', options: { laidUp: [12, 13] }, code: 'not-a-month', values: { value: '13' } },
  ])('$case', ({ options, code, values }) => {
    expect(forecast(FOUR, options)).toEqual({ ok: false, refusal: { code, values } });
  });
});
