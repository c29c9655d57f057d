import type { Facts } from '../journal/facts.ts';
import { finds, stepPhotos, stepValues, ticks } from './doing.ts';

/** Ids of steps of a task that something stands on in any session: ticks, values, photographs, finds. */
export function stepsNamed(facts: Facts, task: string): readonly string[] {
  const refs = [
    ...facts.all(ticks).flatMap((one) => one.of),
    ...facts.all(stepValues).map((one) => one.at),
    ...facts.all(stepPhotos).flatMap((one) => one.at ?? []),
    ...facts.all(finds).flatMap((one) => one.at ?? []),
  ];
  return refs.filter((ref) => ref.task === task).map((ref) => ref.step);
}
