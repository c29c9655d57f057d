import type { ProgramDraft, Term } from '../integer-program/program.ts';
import { must } from '../result/assert.ts';
import type { NeedSource } from './order-facts.ts';
import { isMeetable, partsOf, type NeedGroup } from './order-groups.ts';
import type { OrderNeed } from './order-instance.ts';

/** Variables of a group of needs: how many are met (or left for later), how many left for later, and how many are met by each part where parts may not be mixed. */
export interface GroupVariables {
  readonly group: NeedGroup;
  readonly met: number;
  readonly later: number | null;
  readonly parts: readonly { readonly part: string; readonly chosen: number }[];
  readonly takes: readonly Take[];
}

/** A variable that says how much a group takes of a part from a source: so many times `each` units. */
export interface Take extends NeedSource {
  readonly group: NeedGroup;
  readonly each: number;
  /** The most it can be: all that the group wants. */
  readonly whole: number;
  readonly variable: number;
}

/** What a need weighs in the program at hand. */
export interface NeedWeight {
  readonly metCost: number;
  readonly laterCost: number;
  readonly mustMeet: boolean;
}

/** Adds what a group of needs takes from each source; each need takes all it wants, or nothing. */
export function addGroup(draft: ProgramDraft, group: NeedGroup, weigh: (need: OrderNeed) => NeedWeight): GroupVariables {
  const first = must(group.members[0], 'member of a group');
  const weight = weigh(first.need);
  const mayWait = first.need.laterMinor !== null;
  const meetable = isMeetable(first);
  const settled = mayWait || (meetable && weight.mustMeet);
  const met = draft.variable({
    lower: settled ? group.count : 0,
    upper: mayWait || meetable ? group.count : 0,
    whole: true,
    cost: meetable ? weight.metCost : 0,
  });
  const later = mayWait ? draft.variable({ upper: group.count, whole: true, cost: weight.laterCost }) : null;
  const takes = first.sources.map((source) => addTake(draft, group, source, first.step));
  const taking: readonly Term[] = later === null ? [[met, -1]] : [[met, -1], [later, 1]];
  return { group, met, later, takes, parts: balance(draft, group, takes, taking, first.need.mix, first.step) };
}

function addTake(draft: ProgramDraft, group: NeedGroup, { part, from }: NeedSource, step: number | null): Take {
  const each = step ?? group.units;
  const whole = (group.units * group.count) / each;
  const variable = draft.variable({ upper: Math.floor(whole), whole: step !== null });
  return { group, part, from, each, whole, variable };
}

/** What is taken is what the needs met want; by one part each, where parts may not be mixed. Hands out the choices of parts. */
function balance(draft: ProgramDraft, group: NeedGroup, takes: readonly Take[], taking: readonly Term[], mix: boolean, step: number | null): GroupVariables['parts'] {
  const one = step === null ? 1 : group.units / step;
  const sumOf = (some: readonly Take[]) => some.map(({ variable }): Term => [variable, 1]);
  const parts = partsOf(takes);
  if (mix || parts.length <= 1) {
    draft.row(0, [...sumOf(takes), ...taking.map(([at, sign]): Term => [at, sign * one])], 0);
    return [];
  }
  const choices = parts.map((part) => ({ part, chosen: draft.variable({ upper: group.count, whole: true }) }));
  for (const { part, chosen } of choices) draft.row(0, [...sumOf(takes.filter((take) => take.part === part)), [chosen, -one]], 0);
  draft.row(0, [...choices.map(({ chosen }): Term => [chosen, 1]), ...taking], 0);
  return choices;
}
