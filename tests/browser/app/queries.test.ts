import { expect, test } from 'vitest';
import { mayHaveChanged } from '../../../renderer/app/queries.ts';

const PIP = { ok: true, value: { car: { id: 'pip' } } };

/** Source for all: our own rule. */
test.each([
  { case: 'the car that changed', key: ['car.show', { car: 'Pip' }], answer: PIP, cars: ['pip'], drops: true },
  { case: 'another car', key: ['car.show', { car: 'Pip' }], answer: PIP, cars: ['alder'], drops: false },
  { case: 'a change of the household', key: ['car.show', { car: 'pip' }], answer: PIP, cars: [], drops: true },
  { case: 'a car that was refused and may be there now', key: ['car.show', { car: 'pip' }], answer: { ok: false, refusal: { code: 'unknown-car', values: {} } }, cars: ['alder'], drops: true },
  { case: 'all cars at once', key: ['yard.show', {}], answer: undefined, cars: ['alder'], drops: true },
])('an answer about $case', ({ key, answer, cars, drops }) => expect(mayHaveChanged(key, answer, cars)).toBe(drops));
