import { draftProgram, type Program, type ProgramDraft, type Term } from '../integer-program/program.ts';
import { must } from '../result/assert.ts';
import { boundOnDay, LEFT, type Placement, type PlanFacts } from './plan-facts.ts';
import type { Keep } from './plan-knapsack.ts';

/** What a plan program makes least: what the plan costs, or how many must-do tasks find no place. */
export type PlanGoal = 'cost' | 'unplaced';

/** A program that places single tasks, and the variable of each option. */
export interface PlanModel {
  readonly program: Program;
  readonly chosen: readonly { readonly task: number; readonly slot: number; readonly variable: number }[];
}

interface SlotVariables {
  readonly open: number;
  readonly load: Term[];
  readonly access: Map<number, number>;
}

/**
 * Writes a plan problem as a program: a choice for each option, each slot opened and each access. Every option is bound to its session and its
 * access by rows of its own, which keeps the relaxation tight. For `unplaced` must-do tasks alone count, each left out costing 1.
 */
export function planModel(facts: PlanFacts, goal: PlanGoal, keep: Keep): PlanModel {
  const draft = draftProgram();
  const cost = (minor: number) => (goal === 'cost' ? minor : 0);
  const choice = (minor: number) => draft.variable({ upper: 1, whole: true, cost: cost(minor) });
  const slots = facts.slots.map(({ openingMinor }): SlotVariables => ({ open: choice(openingMinor), load: [], access: new Map() }));
  const chosen: { task: number; slot: number; variable: number }[] = [];
  facts.tasks.forEach((task, number) => {
    if (goal === 'unplaced' && !task.mustDo) return;
    const terms: Term[] = [];
    for (const { slot, costMinor } of task.options.filter((option) => keep(number, option.slot))) {
      const variable = choice(costMinor);
      chosen.push({ task: number, slot, variable });
      terms.push([variable, 1]);
      bindOption({ draft, facts, choice }, must(slots[slot], 'slot'), { variable, task: number, slot });
    }
    if (!task.mustDo) terms.push([choice(task.leftMinor), 1]);
    else if (goal === 'unplaced') terms.push([draft.variable({ upper: 1, whole: true, cost: 1 }), 1]);
    draft.row(1, terms, 1);
  });
  slots.forEach(({ open, load }, slot) => draft.row(-Infinity, [...load, [open, -must(facts.slots[slot], 'slot').minutes]], 0));
  addNeverAll(draft, facts, chosen);
  return { program: draft.program(), chosen };
}

interface Writing {
  readonly draft: ProgramDraft;
  readonly facts: PlanFacts;
  readonly choice: (minor: number) => number;
}

function bindOption({ draft, facts, choice }: Writing, slot: SlotVariables, of: { variable: number; task: number; slot: number }): void {
  const task = must(facts.tasks[of.task], 'task');
  const { minuteMinor } = must(facts.slots[of.slot], 'slot');
  slot.load.push([of.variable, task.minutes]);
  draft.row(-Infinity, [[of.variable, 1], [slot.open, -1]], 0);
  for (const group of task.groups) {
    const { minutes } = must(facts.groups[group], 'group');
    let access = slot.access.get(group);
    if (access === undefined) {
      access = choice(minutes * minuteMinor);
      slot.access.set(group, access);
      slot.load.push([access, minutes]);
      draft.row(-Infinity, [[access, 1], [slot.open, -1]], 0);
    }
    draft.row(-Infinity, [[of.variable, 1], [access, -1]], 0);
  }
}

function addNeverAll(draft: ProgramDraft, facts: PlanFacts, chosen: PlanModel['chosen']): void {
  for (const list of facts.neverAll) {
    for (const day of facts.instance.days.keys()) {
      const { cars, most } = boundOnDay(facts, list, day);
      const worked = cars.map((car) => {
        const variable = draft.variable({ upper: 1 });
        for (const { task, slot, variable: option } of chosen) {
          if (facts.tasks[task]?.car === car && facts.slots[slot]?.day === day) draft.row(0, [[variable, 1], [option, -1]], Infinity);
        }
        return variable;
      });
      draft.row(-Infinity, worked.map((variable) => [variable, 1]), most);
    }
  }
}

/** The plan that values of the program choose. */
export function placementIn(facts: PlanFacts, { chosen }: PlanModel, values: readonly number[]): Placement {
  const placement = new Int32Array(facts.tasks.length).fill(LEFT);
  for (const { task, slot, variable } of chosen) if ((values[variable] ?? 0) > 0.5) placement[task] = slot;
  return placement;
}
