import type { ChosenPlace } from './plan-baseline.ts';
import { composePlanProblem } from './compose-plan-problem.ts';
import type { PlanInput } from './plan-problem.ts';

/**
 * What a plan was proposed of, as a short text: places, days, tasks and what each would cost anywhere, whatever is kept. As long as it stays the
 * same, what was proven of the plan still holds.
 */
export function planBasis(input: PlanInput): string {
  return fingerprint(JSON.stringify(composePlanProblem({ ...input, pinned: [], asked: [] }).instance));
}

/** Which task stands where, as a short text; the order in which they are given counts for nothing. */
export function choiceFingerprint(chosen: readonly ChosenPlace[]): string {
  return fingerprint(chosen.map(({ task, day, place }) => `${task} ${day} ${place}`).sort().join('\n'));
}

/** Two hashes of 32 bits by the FNV-1a rule, from two beginnings: told apart, not proven. */
function fingerprint(text: string): string {
  const [a, b] = [FIRST, SECOND].map((start) => hash(text, start));
  return `${a}${b}`;
}

const FIRST = 0x811c9dc5;
const SECOND = 0x1b873593;
const PRIME = 0x01000193;

function hash(text: string, start: number): string {
  let value = start;
  for (let at = 0; at < text.length; at += 1) value = Math.imul(value ^ text.charCodeAt(at), PRIME);
  return (value >>> 0).toString(16).padStart(8, '0');
}
