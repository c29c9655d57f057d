import type { SheetStep, Turn } from './sheet-step.ts';

/**
 * The turn of a step. One that says nothing but has the hazard of a running engine is taken for one that runs it: before all else
 * where its task drains something later, else when everything is filled in again.
 *
 * @example turnOf([{ turn: 'work', hazards: ['running-engine'], ... }], 0) //=> 'run'
 */
export function turnOf(steps: readonly Pick<SheetStep, 'turn' | 'hazards'>[], at: number): Turn {
  const step = steps[at];
  if (step === undefined) return 'work';
  if (step.turn !== 'work' || !step.hazards.includes('running-engine')) return step.turn;
  return steps.slice(at + 1).some((later) => later.turn === 'drain') ? 'before' : 'run';
}
