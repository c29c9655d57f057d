import type { Facts } from '../journal/facts.ts';
import type { Message } from '../result/result.ts';
import { sayKind } from '../result/words/say.ts';
import { fluidRule } from './fluid.ts';
import { neverMixes, type MixSide, type NeverMix } from './never-mix.ts';
import { parts, type Part } from './part.ts';
import { specifications, type Specification } from './specification.ts';

/** Why two things do not go together, and how grave it is: `never`, or to be asked. */
export interface MixRule {
  readonly rule: 'never' | 'ask';
  readonly between: readonly [string, string];
  readonly why: Message;
}

/** What is said of two specifications in one system; a keeper's pair before our table of fluids. Null where they may meet. */
export function ruleBetween(pairs: readonly NeverMix[], a: Specification, b: Specification): MixRule | null {
  if (a.id === b.id) return null;
  const stated = pairs.filter(({ between: [one, other] }) => (names(one, a) && names(other, b)) || (names(one, b) && names(other, a)));
  const pair = stated.find(({ rule }) => rule === 'never') ?? stated[0];
  if (pair !== undefined) return { rule: pair.rule, between: [a.id, b.id], why: { key: 'mix-stated', values: { why: pair.why } } };
  const fluid = fluidRule(a.fluid, b.fluid);
  if (fluid === null) return null;
  const values = { a: a.name, b: b.name, baseA: baseOf(a), baseB: baseOf(b) };
  return { rule: fluid.rule, between: [a.id, b.id], why: { key: fluid.why, values } };
}

function baseOf({ fluid }: Specification): string | null {
  return fluid?.base == null ? null : sayKind('base', fluid.base);
}

/** What is said of two parts in one system: nothing where some specification is met by both, else the gravest of what their specifications say. */
export function mixRuleOf(facts: Facts, a: Part, b: Part): MixRule | null {
  if (a.id === b.id || a.meets.some((one) => b.meets.includes(one))) return null;
  const pairs = facts.all(neverMixes);
  const rules = a.meets.flatMap((one) => b.meets.flatMap((other) => ruleOfIds(facts, pairs, one, other) ?? []));
  return gravest(rules);
}

/** The gravest rule among the specifications that one part is said to meet; null where they go together. */
export function rulesWithin(facts: Facts, meets: readonly string[]): readonly MixRule[] {
  const pairs = facts.all(neverMixes);
  return meets.flatMap((one, at) => meets.slice(at + 1).flatMap((other) => ruleOfIds(facts, pairs, one, other) ?? []));
}

function ruleOfIds(facts: Facts, pairs: readonly NeverMix[], a: string, b: string): MixRule | null {
  const [one, other] = [facts.get(specifications, a), facts.get(specifications, b)];
  return one === null || other === null ? null : ruleBetween(pairs, one, other);
}

/** The rule that binds most. */
export function gravest(rules: readonly MixRule[]): MixRule | null {
  return rules.find(({ rule }) => rule === 'never') ?? rules[0] ?? null;
}

function names(side: MixSide, specification: Specification): boolean {
  if (side.kind === 'specification') return side.id === specification.id;
  const { fluid } = specification;
  return fluid !== null && fluid.use === side.fluid.use && (side.fluid.base === null || fluid.base === side.fluid.base);
}

/** Whether one need of a specification may be met by several parts: the keeper says so, and nothing that meets it is to be kept from another. */
export function mayMix(facts: Facts, specification: string): boolean {
  if (facts.get(specifications, specification)?.mix !== true) return false;
  const meeting = facts.all(parts).filter((part) => part.meets.includes(specification));
  const pairs = facts.all(neverMixes);
  const others = meeting.map((part) => part.meets.filter((one) => one !== specification));
  return others.every((one, at) => others.slice(at + 1).every((other) => one.every((a) => other.every((b) => ruleOfIds(facts, pairs, a, b) === null))));
}
