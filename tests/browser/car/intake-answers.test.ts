import { describe, expect, test } from 'vitest';
import { answersFor, questionsOf, rowAfter, standing, type Intake, type IntakeItem } from '../../../renderer/car/intake/answers.ts';
import { nameOrder } from '../../../renderer/ui/name-order.ts';
import { day } from '../../shared-core/calendar/day.ts';

const ITEM: IntakeItem = { item: 'oil', name: 'Oil', work: 'replace', harm: 'damage', minutes: null, knowledge: 'unknown', answered: null, question: 'open', readingGiven: false, doneOn: null, record: null, until: null, exact: true, reason: { code: '', values: {}, text: '' } };
const of = (item: string, change: Partial<IntakeItem> = {}): IntakeItem => ({ ...ITEM, item, name: item, ...change });

/** Source for all: worked by hand from the stated rule. */
describe('what is asked', () => {
  test('stands in one order, wherever the advice puts it; what asks nothing is left out', () => {
    const intake = (now: readonly IntakeItem[], look: readonly IntakeItem[], wait: readonly IntakeItem[]) => ({ now, look, wait }) as unknown as Intake;
    const [belt, oil, pads, dated] = [of('belt'), of('oil'), of('pads', { harm: 'safety' }), of('dated', { question: 'none' })];
    const order = ['pads', 'belt', 'oil'];
    expect(questionsOf(intake([oil, belt], [pads], [dated]), nameOrder('en')).map(({ item }) => item)).toEqual(order);
    expect(questionsOf(intake([], [belt], [pads, dated, oil]), nameOrder('en')).map(({ item }) => item)).toEqual(order);
  });

  test.each([
    { case: 'the next open row', questions: ['o', 's', 'o'], from: 0, to: 2 },
    { case: 'round to the first open row', questions: ['o', 's', 'o'], from: 2, to: 0 },
    { case: 'nowhere from the last open row', questions: ['s', 'o', 's'], from: 1, to: null },
    { case: 'nowhere from an answer that is changed', questions: ['o', 's', 'o'], from: 1, to: null },
  ] as const)('goes on to $case', ({ questions, from, to }) => {
    const items = questions.map((question, at) => of(`i${at}`, { question: question === 'o' ? 'open' : 'settled' }));
    expect(rowAfter(items, `i${from}`)).toBe(to === null ? null : `i${to}`);
  });

  test.each([
    { case: 'open', change: {}, stands: null },
    { case: 'answered', change: { question: 'settled', answered: 'unknown' }, stands: 'unknown' },
    { case: 'taken as never done and not due', change: { question: 'settled', knowledge: 'never-done' }, stands: 'never-done' },
    { case: 'taken as never done and due', change: { knowledge: 'never-done' }, stands: null },
    { case: 'counted from the purchase', change: { question: 'settled', knowledge: 'from-purchase' }, stands: 'from-purchase' },
  ] as const)('of an item $case: $stands', ({ change, stands }) => {
    expect(standing(of('oil', change))).toBe(stands);
  });

  test('each answer has its own key, the letter its word begins with; a purchase on no day is not offered', () => {
    const known = answersFor({ keptSince: day('2026-11-01') });
    expect(known.map(({ answer, key }) => [answer, key])).toEqual([['proven', 'p'], ['said', 's'], ['unknown', 'u'], ['never-done', 'n'], ['from-purchase', 'f']]);
    expect(answersFor({ keptSince: null }).map(({ answer }) => answer)).not.toContain('from-purchase');
  });
});
