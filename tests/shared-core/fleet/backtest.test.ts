import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { fromDayNumber } from '../../../shared-core/calendar/local-date.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { backtest, type Backtest, type BacktestFile } from '../../../shared-core/fleet/backtest.ts';
import { parseOdometerLog } from '../../../shared-core/fleet/odometer-log.ts';

const LOGS = new URL('../../../../shared/odometer/', import.meta.url);

function parsed(name: string, csv: string): BacktestFile {
  const log = parseOdometerLog(csv);
  if (!log.ok) throw new Error(`${name}: ${log.refusal.code}`);
  return { name, readings: log.value };
}

/** Readings on the days given, by a distance for each day. */
function written(name: string, days: readonly number[], km: (day: number) => number): BacktestFile {
  return parsed(name, days.map((day) => `${fromDayNumber(day)},${km(day)}`).join('\n'));
}

function scored(files: readonly BacktestFile[], spacingDays?: number): Backtest {
  const told = backtest(files, spacingDays);
  if (!told.ok) throw new Error(told.refusal.code);
  return told.value;
}

const upTo = (last: number) => Array.from({ length: last + 1 }, (_, day) => day);
const steady = written('steady', upTo(400), (day) => day * 50);

describe('a car that always goes 50 km a day, read every day for 400 days', () => {
  const told = scored([steady]);

  // By hand: kept on days 0, 60 ... 360; an origin counts where it and the horizon (or distance / 50 days) end by day 400.
  test('has these origins and forecasts', () => {
    expect([told.files, told.origins]).toEqual([1, 6]);
    expect(told.distance.map(({ days, n }) => [days, n])).toEqual([[30, 6], [90, 5], [180, 3], [365, 0]]);
    expect(told.due.map(({ addKm, n }) => [addKm, n])).toEqual([[2000, 6], [5000, 5], [10_000, 3]]);
  });

  test('is foretold without error by a straight line', () => {
    const { lastTwo, allHistory } = told.baselines;
    for (const baseline of [lastTwo, allHistory]) {
      expect(baseline.distance).toEqual([30, 90, 180, 365].map((days, at) => ({ days, n: told.distance[at]?.n, wMAPE: at < 3 ? 0 : null })));
      expect(baseline.due).toEqual([2000, 5000, 10_000].map((addKm, at) => ({ addKm, n: told.due[at]?.n, medianAbsDays: 0, meanAbsDays: 0 })));
    }
  });

  test('is foretold by us with a small error and inside our range', () => {
    for (const { wMAPE, coverage80 } of told.distance.slice(0, 3)) {
      expect(wMAPE).toBeGreaterThan(0);
      expect(wMAPE).toBeLessThan(0.15);
      expect(coverage80).toBe(1);
    }
    expect(told.distance[3]).toEqual({ days: 365, n: 0, wMAPE: null, coverage80: null });
  });

  test('another spacing gives other origins', () => {
    expect(scored([steady], 200).origins).toBe(2);
    expect(scored([steady], 1).origins).toBe(400);
  });
});

describe('files', () => {
  test('each weighs the same, however long', () => {
    const other = written('other', upTo(200), (day) => day * 20 + (day > 100 ? (day - 100) * 30 : 0));
    const [one, two, both] = [scored([steady]), scored([other]), scored([steady, other])];
    const mean = ((one.distance[0]?.wMAPE ?? 0) + (two.distance[0]?.wMAPE ?? 0)) / 2;
    expect(both.distance[0]?.wMAPE).toBeCloseTo(mean, 3);
    expect(both.origins).toBe(one.origins + two.origins);
  });

  test('a target in a hole of more than 75 days is skipped', () => {
    const hole = written('hole', [...upTo(100), ...upTo(100).map((day) => day + 176)], (day) => day * 50);
    // By hand: kept 0, 60, 176, 236; 30 days on from 60 is known, 90 days on lies in the hole, 176 and 236 + 30 are known.
    expect(scored([hole]).distance.slice(0, 2).map(({ n }) => n)).toEqual([3, 1]);
  });

  test('only the highest of a day counts', () => {
    const twice = parsed('twice', upTo(400).flatMap((day) => [`${fromDayNumber(day)},${day * 50}`, `${fromDayNumber(day)},${Math.max(0, day * 50 - 7)}`]).join('\n'));
    expect(scored([twice])).toEqual(scored([steady]));
  });

  test('none gives no score', () => {
    expect(scored([])).toMatchObject({ files: 0, origins: 0, due: [{ n: 0, meanAbsDays: null, coverage80: null }, { n: 0 }, { n: 0 }] });
  });

  test('one that falls is refused by name and line, a spacing that is none too', () => {
    const falls = parsed('falls.csv', 'date,km\n2024-01-01,500\n2024-02-01,499');
    expect(backtest([steady, falls])).toEqual({ ok: false, refusal: { code: 'log-falls', values: { file: 'falls.csv', line: 3 } } });
    expect(backtest([steady], 0)).toEqual({ ok: false, refusal: { code: 'not-a-spacing', values: { value: '0' } } });
  });
});

describe('seven real logs', () => {
  // Source: house measurement on the logs beside the specification, which are not copied here.
  test('score as they were measured', ({ skip }) => {
    if (!existsSync(LOGS)) skip(`the logs are not at ${LOGS.pathname}`);
    const names = readdirSync(LOGS).filter((name) => name.endsWith('.csv')).sort();
    const told = scored(names.map((name) => parsed(name, readFileSync(new URL(name, LOGS), 'utf8'))));
    expect([told.files, told.origins]).toEqual([7, 232]);
    const near = (figure: number | null | undefined, measured: number, within: number) =>
      expect(Math.abs(must(figure, 'figure') - measured), `${figure} against ${measured}`).toBeLessThanOrEqual(within);
    for (const [at, measured] of [26.3, 48.1, 88.9].entries()) near(told.due[at]?.meanAbsDays, measured, 0.06);
    for (const [at, measured] of [0.776, 0.816, 0.823].entries()) near(told.due[at]?.coverage80, measured, 0.0006);
    for (const [at, measured] of [35.5, 74.5, 125.3].entries()) near(told.baselines.lastTwo.due[at]?.meanAbsDays, measured, 0.06);
    for (const [at, measured] of [30, 56, 105.8].entries()) near(told.baselines.allHistory.due[at]?.meanAbsDays, measured, 0.06);
  });
});
