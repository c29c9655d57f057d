import { QueryObserver } from '@tanstack/react-query';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { dropWhatChanged, mayHaveChanged, queries } from '../../../renderer/app/queries.ts';
import type { PagePush } from '../../../renderer/bridge/pushes.ts';

const PIP = { ok: true, value: { car: { id: 'pip' } } };

/** Source for all: our own rule. */
test.each([
  { case: 'the car that changed', key: ['car.show', { car: 'Pip' }], answer: PIP, cars: ['pip'], drops: true },
  { case: 'another car', key: ['car.show', { car: 'Pip' }], answer: PIP, cars: ['alder'], drops: false },
  { case: 'a change of the household', key: ['car.show', { car: 'pip' }], answer: PIP, cars: [], drops: true },
  { case: 'a car that was refused and may be there now', key: ['car.show', { car: 'pip' }], answer: { ok: false, refusal: { code: 'unknown-car', values: {} } }, cars: ['alder'], drops: true },
  { case: 'all cars at once', key: ['yard.show', {}], answer: undefined, cars: ['alder'], drops: true },
])('an answer about $case', ({ key, answer, cars, drops }) => expect(mayHaveChanged(key, answer, cars)).toBe(drops));

describe('an answer on its way while something changes', () => {
  let ask: ((value: unknown) => void)[];
  let stop: () => void;
  let shown: unknown;

  beforeEach(() => {
    ask = [];
    shown = undefined;
    stop = new QueryObserver(queries, { queryKey: ['yard.show', {}], queryFn: () => new Promise((answer) => ask.push(answer)) }).subscribe(({ data }) => (shown = data));
  });
  afterEach(() => {
    stop();
    queries.clear();
  });

  test.each<PagePush>([{ kind: 'heard-again' }, { kind: 'changed', stages: ['sessions'], cars: ['pip'] }])('$kind: it is asked for anew, and the older answer is not shown', async (push) => {
    await expect.poll(() => ask.length).toBe(1);
    dropWhatChanged(push);
    await expect.poll(() => ask.length).toBe(2);
    ask[0]?.('before');
    ask[1]?.('after');
    await expect.poll(() => shown).toBe('after');
  });
});
