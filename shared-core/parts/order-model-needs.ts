import type { ProgramDraft, Term } from '../integer-program/program.ts';
import type { NeedFacts, OrderFacts } from './order-facts.ts';
import type { OrderNeed } from './order-instance.ts';

/** Variables of a need: whether it is met (or left for later), whether left for later, and the one part it is met by where parts may not be mixed. */
export interface NeedVariables {
  readonly met: number;
  readonly later: number | null;
  readonly parts: readonly { readonly part: string; readonly chosen: number }[];
}

/** A variable that says how much a need takes of a part from a source: so many times `each` units. */
export interface Take {
  readonly need: NeedFacts;
  readonly part: string;
  readonly from: string;
  readonly each: number;
  /** The most it can be: the whole need. */
  readonly whole: number;
  readonly variable: number;
}

/** What a need weighs in the program at hand. */
export interface NeedWeight {
  readonly metCost: number;
  readonly laterCost: number;
  readonly mustMeet: boolean;
}

/** Whether a need could be met if it were the only one, as far as can be seen without reckoning; one that may wait is always settled and not counted. */
export function isMeetable({ need, units, step, sources }: NeedFacts): boolean {
  return need.laterMinor === null && sources.length > 0 && (step === null || units % step === 0);
}

/** Adds what each need takes from each source; a need takes all it wants, or nothing. */
export function addNeeds(
  draft: ProgramDraft,
  facts: OrderFacts,
  weigh: (need: OrderNeed) => NeedWeight,
): { readonly needs: ReadonlyMap<string, NeedVariables>; readonly takes: readonly Take[] } {
  const needs = new Map<string, NeedVariables>();
  const takes: Take[] = [];
  for (const need of facts.needs) {
    const own = need.sources.map((source) => addTake(draft, need, source));
    needs.set(need.need.id, addNeed(draft, need, own, weigh(need.need)));
    takes.push(...own);
  }
  return { needs, takes };
}

function addTake(draft: ProgramDraft, need: NeedFacts, { part, from }: { part: string; from: string }): Take {
  const each = need.step ?? need.units;
  const whole = need.units / each;
  const variable = draft.variable({ upper: Math.floor(whole), whole: need.step !== null });
  return { need, part, from, each, whole, variable };
}

function addNeed(draft: ProgramDraft, need: NeedFacts, takes: readonly Take[], weight: NeedWeight): NeedVariables {
  const mayWait = need.need.laterMinor !== null;
  const meetable = isMeetable(need);
  const settled = mayWait || (meetable && weight.mustMeet);
  const met = draft.variable({ lower: settled ? 1 : 0, upper: mayWait || meetable ? 1 : 0, whole: true, cost: meetable ? weight.metCost : 0 });
  const later = mayWait ? draft.variable({ upper: 1, whole: true, cost: weight.laterCost }) : null;
  const taking: readonly Term[] = later === null ? [[met, -1]] : [[met, -1], [later, 1]];
  const parts = [...new Set(takes.map(({ part }) => part))];
  const whole = takes[0]?.whole ?? 1;
  if (need.need.mix || parts.length <= 1) {
    draft.row(0, [...takes.map(({ variable }): Term => [variable, 1]), ...taking.map(([at, sign]): Term => [at, sign * whole])], 0);
    return { met, later, parts: [] };
  }
  const choices = parts.map((part) => ({ part, chosen: draft.variable({ upper: 1, whole: true }) }));
  for (const { part, chosen } of choices) {
    const ofPart = takes.filter((take) => take.part === part).map(({ variable }): Term => [variable, 1]);
    draft.row(0, [...ofPart, [chosen, -whole]], 0);
  }
  draft.row(0, [...choices.map(({ chosen }): Term => [chosen, 1]), ...taking], 0);
  return { met, later, parts: choices };
}
