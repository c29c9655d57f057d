import { describe, expect, test } from 'vitest';
import { directSolver } from '../../../electron/solver/highs-instance.ts';
import type { ProgramAnswer } from '../../../shared-core/integer-program/solver.ts';
import type { Program } from '../../../shared-core/integer-program/program.ts';
import { planModel, placementIn } from '../../../shared-core/sessions/plan-model.ts';
import { patternModel, placementOf } from '../../../shared-core/sessions/plan-pattern-model.ts';
import { patternOf } from '../../../shared-core/sessions/plan-pattern.ts';
import { workOutPlan } from '../../../shared-core/sessions/work-out-plan.ts';
import { planInstanceOf } from './plan-written.ts';

const highs = directSolver();
const [FIRST, SECOND] = ['2027-01-09', '2027-01-16'];

/** Oil of c1 costs nothing on the first day and 500 on the second; pads of c2 the same. One of the cars stays to drive. */
function factsWith(away: Readonly<Record<string, readonly string[]>>) {
  const task = (id: string, car: string) => ({ id, car, minutes: 30, leftUndoneMinor: 9000, costMinor: { home: [0, 500] } });
  const facts = workOutPlan(planInstanceOf({
    days: [FIRST, SECOND], places: [{ id: 'home', openingMinor: 0, minutesADay: 300 }],
    tasks: [task('oil', 'c1'), task('pads', 'c2')],
    cars: Object.entries(away).map(([id, days]) => ({ id, away: [...days] })), neverAll: [['c1', 'c2', 'c3']],
  }));
  if (!facts.ok) throw new Error(facts.refusal.code);
  return facts.value;
}

async function solved(program: Program): Promise<readonly number[]> {
  const answer: ProgramAnswer = await highs.solve(program, {});
  if (answer.status !== 'optimal') throw new Error(answer.status);
  return answer.values;
}

const CASES = [
  { case: 'nobody away: both on the first day, for c3 is there', away: {}, days: [0, 0] },
  { case: 'c3 away on the first day: one of them is put off', away: { c3: [FIRST] }, days: [0, 1] },
  { case: 'c3 and c2 away on the first day: c1 is put off, for it is the last; what is away may be worked on where it is', away: { c2: [FIRST], c3: [FIRST] }, days: [0, 1] },
  { case: 'all away on the first day: nothing stands then', away: { c1: [FIRST], c2: [FIRST], c3: [FIRST] }, days: [1, 1] },
] as const;

describe('cars that are away, in the programs themselves', () => {
  test.each(CASES)('placing single tasks: $case', async ({ away, days }) => {
    const facts = factsWith(away);
    const model = planModel(facts, 'cost', () => true);
    const placement = placementIn(facts, model, await solved(model.program));
    expect([...placement].map((slot) => facts.slots[slot]?.day).sort()).toEqual(days);
  });

  test.each(CASES)('choosing among sessions: $case', async ({ away, days }) => {
    const facts = factsWith(away);
    const patterns = facts.slots.flatMap((_, slot) => [[0], [1], [0, 1]].map((tasks) => patternOf(facts, slot, tasks)).filter((one) => one !== null));
    const model = patternModel(facts, patterns, { cover: 'once', grain: 1 });
    const placement = placementOf(facts, model, await solved(model.program));
    expect([...placement].map((slot) => facts.slots[slot]?.day).sort()).toEqual(days);
  });
});
