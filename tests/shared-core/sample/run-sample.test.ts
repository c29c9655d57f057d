import { expect, test } from 'vitest';
import { ok, refuse } from '../../../shared-core/result/result.ts';
import { runSample } from '../../../shared-core/sample/run-sample.ts';
import { call, enteredAt, type PaperStep, type SampleStep } from '../../../shared-core/sample/sample-step.ts';
import { day } from './sample-household.ts';

const on = day('2025-11-06');
const paper: PaperStep = {
  on, operation: 'paper.keep', label: 'paper:pip-1',
  request: { name: 'a.png', draw: { kind: 'photograph', subject: 'brake-pad', wear: 0.5, seed: 1 } },
};
const record = call(on, 'record.add', { car: 'pip', papers: ['paper:pip-1'], note: 'a paper: none', reading: { paper: 'paper:pip-1' } });

test('labels become the ids of the papers kept before, wherever they stand, and other text stays', async () => {
  const seen: SampleStep[] = [];
  const done = await runSample([paper, record], (step) => {
    seen.push(step);
    return Promise.resolve(ok({ paper: { id: 'ab12' } }));
  });
  expect(done).toEqual({ ok: true, value: 2 });
  expect(seen).toEqual([paper, { ...record, request: { car: 'pip', papers: ['ab12'], note: 'a paper: none', reading: { paper: 'ab12' } } }]);
});

test('the first refusal stops it and names its step', async () => {
  let calls = 0;
  const done = await runSample([paper, record, record], () => Promise.resolve((calls += 1) === 1 ? ok({ paper: { id: 'ab12' } }) : refuse('unknown-car', { car: 'pip' })));
  expect(calls).toBe(2);
  expect(done).toEqual({ ok: false, refusal: { code: 'unknown-car', values: { car: 'pip', step: 'record.add on 2025-11-06' } } });
});

test('a label that nothing was kept under, and a paper without an id, are our own faults', async () => {
  await expect(runSample([record], () => Promise.resolve(ok({})))).rejects.toThrow('paper:pip-1');
  await expect(runSample([paper], () => Promise.resolve(ok({})))).rejects.toThrow('paper:pip-1');
});

test('a step is written in the evening of its day', () => {
  expect(enteredAt(on)).toBe('2025-11-06T18:00:00.000Z');
});
