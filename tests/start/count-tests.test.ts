import { expect, test } from 'vitest';

interface Totals {
  passed: number;
  failed: number;
  skipped: number;
}
const { totalsOf } = (await import(new URL('../../.ci/count-tests.mjs', import.meta.url).href)) as { totalsOf: (text: string) => Totals };

const file = (status: string, ...tests: string[]) => ({ status, assertionResults: tests.map((one) => ({ status: one })) });

test.each([
  { case: 'all passed', results: [file('passed', 'passed', 'passed'), file('passed', 'passed')], totals: { passed: 3, failed: 0, skipped: 0 } },
  { case: 'one failed, one skipped', results: [file('failed', 'passed', 'failed', 'pending')], totals: { passed: 1, failed: 1, skipped: 1 } },
  { case: 'a file that could not be loaded', results: [file('passed', 'passed'), file('failed')], totals: { passed: 1, failed: 1, skipped: 0 } },
])('$case', ({ results, totals }) => {
  expect(totalsOf(JSON.stringify({ testResults: results }))).toEqual(totals);
});

test('no report is a failure', () => {
  expect(totalsOf('')).toEqual({ passed: 0, failed: 1, skipped: 0 });
});
