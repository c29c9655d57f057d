import { describe, expect, test } from 'vitest';
import { inspectionScore } from '../../../shared-core/records/inspection-score.ts';
import { workRecordSchema, type WorkRecord } from '../../../shared-core/records/work-record.ts';

const LINE = { item: null, name: 'brakes', work: 'check', outcome: 'good', minutes: null, note: '' };
const record = (over: object): WorkRecord => workRecordSchema.parse({
  id: 'test', car: 'pip', date: '2026-11-20', title: 'yearly test', place: 'garage', placeName: 'the corner', doneBy: null, approvedBy: 'inspector 7', reference: null, method: null, reading: 'r1',
  lines: [LINE, { ...LINE, name: 'lights' }], costs: [], printedTotalMinor: null, lotsUsed: [], papers: [], note: '', reconstructed: false, ...over,
});

/** Source: 14 CFR 43.11(a)(1) to (5), (b) as paraphrased in the reference, section 10: by analogy, each element there or not. */
describe('a record of looking only, by the elements of an inspection entry', () => {
  test.each([
    { case: 'whole', over: {}, missing: [] },
    { case: 'nothing looked at', over: { lines: [{ ...LINE, outcome: 'not-done', note: 'shut' }] }, missing: ['extent', 'outcome'] },
    { case: 'no reading', over: { reading: null }, missing: ['dateAndDistance'] },
    { case: 'from memory', over: { reconstructed: true }, missing: ['dateAndDistance'] },
    { case: 'nobody stands for it', over: { approvedBy: null }, missing: ['inspector'] },
    { case: 'a number to look it up by', over: { approvedBy: null, reference: 'T-4' }, missing: [] },
    { case: 'a defect without words', over: { lines: [LINE, { ...LINE, outcome: 'watch' }] }, missing: ['defects'] },
    { case: 'a defect in words', over: { lines: [LINE, { ...LINE, outcome: 'watch', note: 'play in the joint' }] }, missing: [] },
  ])('$case: missing $missing', ({ over, missing }) => {
    const { held, ...elements } = inspectionScore(record(over)) ?? { held: -1 };
    expect(Object.entries(elements).filter(([, there]) => !there).map(([name]) => name)).toEqual(missing);
    expect(held).toBe(5 - missing.length);
  });

  test('is none where something was replaced', () => {
    expect(inspectionScore(record({ lines: [LINE, { ...LINE, work: 'replace', outcome: 'done' }] }))).toBeNull();
  });
});
