import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ServicePlanLine } from '../../../shared-core/care/service-plan.ts';
import { coverageOf } from '../../../shared-core/records/coverage.ts';
import type { RecordLine } from '../../../shared-core/records/work-record.ts';
import { day } from '../calendar/day.ts';
import { lineOn, recordOn } from './record-examples.ts';

const oil: ServicePlanLine = { item: 'oil', name: 'Engine oil and filter', work: 'replace' };
const pads: ServicePlanLine = { item: 'pads', name: 'Brake pads', work: 'check' };
const wash: ServicePlanLine = { item: null, name: 'Wash the underside', work: 'check' };
const state = (line: ServicePlanLine, ...done: Partial<RecordLine>[]) =>
  coverageOf([line], [recordOn('2026-11-10', { lines: done.map((more) => lineOn(more)) })], day('2026-11-01'), day('2026-11-30')).lines[0]?.state;

describe('the state of a line', () => {
  test.each([
    { case: 'replaced', line: oil, done: [{}], state: 'done' },
    { case: 'put right', line: oil, done: [{ outcome: 'acted' as const }], state: 'done' },
    { case: 'only looked at', line: oil, done: [{ work: 'check' as const, outcome: 'good' as const }], state: 'looked-at' },
    { case: 'looked at and to be watched', line: oil, done: [{ work: 'check' as const, outcome: 'watch' as const }], state: 'looked-at' },
    { case: 'looked at by one, replaced by another', line: oil, done: [{ work: 'check' as const, outcome: 'good' as const }, {}], state: 'done' },
    { case: 'left undone', line: oil, done: [{ outcome: 'not-done' as const }], state: 'not-done' },
    { case: 'left undone by one, done by another', line: oil, done: [{ outcome: 'not-done' as const }, {}], state: 'done' },
    { case: 'never named', line: oil, done: [{ item: 'other', name: 'Other' }], state: 'nobody' },
    { case: 'a check with something to be watched', line: pads, done: [{ item: 'pads', work: 'check' as const, outcome: 'watch' as const }], state: 'done' },
    { case: 'a check of what was replaced', line: pads, done: [{ item: 'pads' }], state: 'done' },
    { case: 'a check left undone', line: pads, done: [{ item: 'pads', work: 'check' as const, outcome: 'not-done' as const }], state: 'not-done' },
    { case: 'one\'s own line, by its name', line: wash, done: [{ item: null, name: ' wash the UNDERSIDE' }], state: 'done' },
    { case: 'one\'s own line, done under an item of that name', line: wash, done: [{ item: 'underside', name: 'Wash the underside' }], state: 'done' },
    { case: 'looked at, and that done', line: oil, done: [{ work: 'check' as const }], state: 'looked-at' },
    { case: 'a garage\'s line without an item, by the item\'s name', line: oil, done: [{ item: null, name: 'engine oil and filter' }], state: 'done' },
    { case: 'another item of the same name', line: oil, done: [{ item: 'oil-2' }], state: 'nobody' },
  ])('$case: $state', ({ line, done, state: expected }) => {
    expect(state(line, ...done)).toBe(expected);
  });
});

describe('the records that count', () => {
  const days = ['2026-10-31', '2026-11-01', '2026-11-15', '2026-11-30', '2026-12-01'];
  const records = days.map((on) => recordOn(on)).reverse();

  test('are those from the first day to the last, in order', () => {
    const { lines } = coverageOf([oil], records, day('2026-11-01'), day('2026-11-30'));
    expect(lines[0]?.visits.map((visit) => visit.record.date)).toEqual(['2026-11-01', '2026-11-15', '2026-11-30']);
  });

  test('what they hold beside the lines asked for stands apart', () => {
    const both = recordOn('2026-11-15', { lines: [lineOn(), lineOn({ item: null, name: 'Key battery' })] });
    const { extras } = coverageOf([oil], [both], day('2026-11-01'), day('2026-11-30'));
    expect(extras.map((visit) => visit.line.name)).toEqual(['Key battery']);
  });
});

test('more records never leave less done, and every line is either asked for or extra', () => {
  const lineArbitrary = fc.record({ item: fc.constantFrom('oil', 'pads', null), name: fc.constantFrom('Engine oil and filter', 'Brake pads', 'Wash the underside', 'Other'), work: fc.constantFrom('replace' as const, 'check' as const), outcome: fc.constantFrom('done' as const, 'good' as const, 'watch' as const, 'acted' as const, 'not-done' as const) });
  const recordArbitrary = fc.record({ day: fc.integer({ min: 1, max: 28 }), lines: fc.array(lineArbitrary, { minLength: 1, maxLength: 4 }) });
  const rank = { nobody: 0, 'not-done': 1, 'looked-at': 2, done: 3 };
  fc.assert(fc.property(fc.array(recordArbitrary, { maxLength: 6 }), fc.nat(6), (asked, some) => {
    const records = asked.map(({ day: on, lines }, at) => recordOn(`2026-11-${String(on).padStart(2, '0')}`, { id: `w${at}`, lines: lines.map((line) => lineOn(line)) }));
    const plan = [oil, pads, wash];
    const whole = coverageOf(plan, records, day('2026-11-01'), day('2026-11-30'));
    const part = coverageOf(plan, records.slice(0, some), day('2026-11-01'), day('2026-11-30'));
    whole.lines.forEach((line, at) => expect(rank[line.state]).toBeGreaterThanOrEqual(rank[part.lines[at]?.state ?? 'nobody']));
    const named = new Set([...whole.lines.flatMap((line) => line.visits), ...whole.extras].map((visit) => visit.line));
    expect(named.size).toBe(asked.reduce((sum, record) => sum + record.lines.length, 0));
  }));
});
