import { draftProgram, type Program, type ProgramDraft, type Term } from '../integer-program/program.ts';
import { must } from '../result/assert.ts';
import { boundOnDay, LEFT, type Placement, type PlanFacts } from './plan-facts.ts';
import type { PlanPattern } from './plan-pattern.ts';

/** A program that chooses among whole sessions; its first variables are the patterns in order, its costs are in grains. */
export interface PatternModel {
  readonly program: Program;
  readonly patterns: readonly PlanPattern[];
  /** The values of the plan that is known, for the solver to start from; of no use where none was given. */
  readonly start: readonly number[];
}

/** How a choice is to be made. */
export interface PatternRule {
  /**
   * Whether each task is in one session, or in at least one. Doing it twice is never cheaper, so both come to the same where all sessions are
   * there; where only some are, more can be put together of them, and what is doubled is then dropped.
   */
  readonly cover: 'once' | 'at-least';
  /** A plan among the patterns. */
  readonly known?: Placement;
  /** Dearer plans are not wanted. */
  readonly ceilingMinor?: number;
  /** Every sum of money is a multiple of this. */
  readonly grain: number;
}

/** Chooses at most one session for each slot, so that each task is covered, or left out at its cost. */
export function patternModel(facts: PlanFacts, patterns: readonly PlanPattern[], rule: PatternRule): PatternModel {
  const draft = draftProgram();
  const known = rule.known ?? new Int32Array(facts.tasks.length).fill(LEFT);
  const start = patterns.map(({ slot, tasks }) => Number(isSessionOf(known, slot, tasks)));
  const costs = patterns.map(({ costMinor }): Term => [draft.variable({ upper: 1, whole: true, cost: costMinor / rule.grain }), costMinor / rule.grain]);
  costs.push(...addTasks(draft, facts, patterns, { rule, known, start }));
  if (rule.ceilingMinor !== undefined) draft.row(-Infinity, costs, rule.ceilingMinor / rule.grain + 0.5);
  addSlots(draft, facts, patterns);
  addNeverAll(draft, facts, patterns, known, start);
  return { program: draft.program(), patterns, start };
}

function isSessionOf(known: Placement, slot: number, tasks: readonly number[]): boolean {
  return tasks.every((task) => known[task] === slot) && known.reduce((count, at) => count + Number(at === slot), 0) === tasks.length;
}

/** Says of each task how often it is done; hands out what leaving tasks out costs. */
function addTasks(draft: ProgramDraft, facts: PlanFacts, patterns: readonly PlanPattern[], of: { rule: PatternRule; known: Placement; start: number[] }): readonly Term[] {
  const holding: Term[][] = facts.tasks.map(() => []);
  patterns.forEach(({ tasks }, pattern) => {
    for (const task of tasks) holding[task]?.push([pattern, 1]);
  });
  return facts.tasks.flatMap(({ mustDo, leftMinor }, task): readonly Term[] => {
    const terms = must(holding[task], 'task');
    const cost = leftMinor / of.rule.grain;
    const left: readonly Term[] = mustDo ? [] : [[draft.variable({ upper: 1, whole: true, cost }), cost]];
    if (!mustDo) of.start.push(Number(of.known[task] === LEFT));
    draft.row(1, [...terms, ...left.map(([variable]): Term => [variable, 1])], of.rule.cover === 'once' ? 1 : Infinity);
    return left;
  });
}

function addSlots(draft: ProgramDraft, facts: PlanFacts, patterns: readonly PlanPattern[]): void {
  const terms: Term[][] = facts.slots.map(() => []);
  patterns.forEach(({ slot }, pattern) => terms[slot]?.push([pattern, 1]));
  for (const row of terms) if (row.length > 1) draft.row(-Infinity, row, 1);
}

/** For each list and day: a car is worked on if any of the day's sessions holds a task of it; one that is there must not be. */
function addNeverAll(draft: ProgramDraft, facts: PlanFacts, patterns: readonly PlanPattern[], known: Placement, start: number[]): void {
  for (const list of facts.neverAll) {
    for (const day of facts.instance.days.keys()) {
      const bound = boundOnDay(facts, list, day);
      const cars = bound.cars.map((car) => {
        const worked = draft.variable({ upper: 1 });
        start.push(Number(known.some((slot, task) => facts.tasks[task]?.car === car && facts.slots[slot]?.day === day)));
        addWorked(draft, facts, patterns, { car, day, worked });
        return worked;
      });
      draft.row(-Infinity, cars.map((worked) => [worked, 1]), bound.most);
    }
  }
}

function addWorked(draft: ProgramDraft, facts: PlanFacts, patterns: readonly PlanPattern[], of: { car: number; day: number; worked: number }): void {
  facts.slots.forEach(({ day }, slot) => {
    if (day !== of.day) return;
    const holding = patterns.flatMap((pattern, at): Term[] =>
      pattern.slot === slot && pattern.tasks.some((task) => facts.tasks[task]?.car === of.car) ? [[at, -1]] : [],
    );
    if (holding.length > 0) draft.row(0, [[of.worked, 1], ...holding], Infinity);
  });
}

/** The plan that values of the program choose; a task chosen twice stands in the earlier slot. */
export function placementOf(facts: PlanFacts, { patterns }: PatternModel, values: readonly number[]): Placement {
  const placement = new Int32Array(facts.tasks.length).fill(LEFT);
  patterns.forEach(({ slot, tasks }, at) => {
    if ((values[at] ?? 0) < 0.5) return;
    for (const task of tasks) if (placement[task] === LEFT || slot < (placement[task] ?? LEFT)) placement[task] = slot;
  });
  return placement;
}
