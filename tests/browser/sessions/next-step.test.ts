import { expect, test } from 'vitest';
import type { Doing } from '../../../shared-core/views/doing-schema.ts';
import { openStepAfter } from '../../../renderer/sessions/doing/next-step.ts';

const doing = (...ticked: readonly boolean[]) => ({ steps: ticked.map((one, at) => ({ key: `s${at}`, tick: one ? {} : null })) }) as unknown as Doing;

test.each([
  { case: 'the next that is open', steps: doing(true, false, true, false), after: 's1', done: [], next: 's3' },
  { case: 'else an earlier one', steps: doing(false, true, false), after: 's2', done: [], next: 's0' },
  { case: 'none but itself', steps: doing(true, true, false), after: 's2', done: [], next: null },
  { case: 'one ticked just now is not gone back to, though the answer does not tell of it yet', steps: doing(true, false, false), after: 's2', done: ['s1', 's2'], next: null },
])('$case', ({ steps, after, done, next }) => {
  expect(openStepAfter(steps, after, new Set(done))?.key ?? null).toBe(next);
});
