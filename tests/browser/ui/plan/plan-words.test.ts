import { describe, expect, test } from 'vitest';
import { householdWords } from '../../../../renderer/ui/household-words.ts';
import { inOwnMoney, sessionDay, sessionState, sessionTasks } from '../../../../renderer/ui/plan/plan-words.ts';

const WORDS = householdWords('en-GB', 'GBP');

describe('how a session is said', () => {
  test.each([
    { case: 'this year', day: '2026-11-28', said: 'Sat 28 Nov' },
    { case: 'another year', day: '2027-01-13', said: 'Wed 13 Jan 2027' },
  ])('its day, $case: $said', ({ day, said }) => expect(sessionDay(day, '2026-11-25', WORDS)).toBe(said));

  test.each([
    { state: 'proposed', passed: false, said: 'proposed' },
    { state: 'kept', passed: false, said: 'kept' },
    { state: 'moved', passed: false, said: 'kept, moved by you' },
    { state: 'kept', passed: true, said: 'its day has passed' },
  ] as const)('$state, passed: $passed', ({ state, passed, said }) => expect(sessionState({ state, passed })).toBe(said));

  test('its tasks, and that they come on top of a kept session', () => {
    const tasks = [{ task: { kind: 'item' as const, id: 'a' }, car: 'pip', carName: 'Pip', name: 'oil', done: false }];
    expect([sessionTasks({ tasks }, false), sessionTasks({ tasks }, true), sessionTasks({ tasks: [...tasks, ...tasks] }, false)]).toEqual(['1 task', '1 more task', '2 tasks']);
  });

  test.each([
    { currency: 'GBP', text: 'It costs 1221.20 GBP, so it saves 0.50 GBP.', said: 'It costs £1,221.20, so it saves £0.50.' },
    { currency: 'JPY', text: 'It costs 1500 JPY more.', said: 'It costs ¥1,500 more.' },
    { currency: 'GBP', text: 'On 28 Nov 2026 GBP is not meant, nor 12.345 GBP.', said: 'On 28 Nov £2,026.00 is not meant, nor 12.345 GBP.' },
  ])('amounts in $currency as the household writes them', ({ currency, text, said }) => expect(inOwnMoney(text, householdWords('en-GB', currency))).toBe(said));
});
