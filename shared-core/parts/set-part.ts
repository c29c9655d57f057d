import { z } from 'zod';
import type { Facts } from '../journal/facts.ts';
import { say } from '../result/words/say.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { gravest, rulesWithin } from './mix-rule.ts';
import { partSchema, parts, partSet, type Part } from './part.ts';
import { allOf, newId, setWhole } from './set-whole.ts';
import { specifications } from './specification.ts';

const shape = partSchema.shape;

/** States a part with what it meets and who says so, or a kit with its contents. */
export const setPart = setWhole(
  partSet,
  z.strictObject({
    ...shape,
    id: newId,
    number: shape.number.default(null),
    meets: shape.meets.default([]),
    stated: shape.stated.default([]),
    keepsOpenedDays: shape.keepsOpenedDays.default(null),
    contains: shape.contains.default([]),
  }),
  partSchema,
  (facts, part) => allOf(() => checkNames(facts, part), () => checkContents(facts, part), () => checkMeets(facts, part)),
);

function checkNames(facts: Facts, part: Part): Result<unknown> {
  const specification = part.meets.find((id) => facts.get(specifications, id) === null);
  if (specification !== undefined) return refuse('unknown-specification', { id: specification }, ['meets']);
  const loose = part.stated.findIndex((one) => !part.meets.includes(one.specification));
  if (loose >= 0) return refuse('stated-but-not-met', { specification: part.stated[loose]?.specification ?? '' }, ['stated', loose, 'specification']);
  const twice = part.stated.findIndex((one, at) => part.stated.findIndex((other) => other.specification === one.specification) < at);
  if (twice >= 0) return refuse('stated-twice', { specification: part.stated[twice]?.specification ?? '' }, ['stated', twice, 'specification']);
  const units = part.meets.map((id) => facts.get(specifications, id)?.unit ?? null);
  const other = units.findIndex((unit) => unit !== units[0]);
  if (other >= 0) return refuse('meets-two-units', { part: part.name, a: units[0] ?? '', b: units[other] ?? '' }, ['meets', other]);
  return part.contains.length > 0 && part.meets.length > 0 ? refuse('kit-meets-nothing', {}, ['meets']) : ok(null);
}

function checkContents(facts: Facts, part: Part): Result<unknown> {
  for (const inside of part.contains) {
    const single = facts.get(parts, inside.part);
    if (single === null) return refuse('unknown-part', { id: inside.part }, ['contains']);
    if (single.contains.length > 0 || inside.part === part.id) return refuse('kit-in-kit', { id: inside.part }, ['contains']);
  }
  const inKit = part.contains.length > 0 && facts.all(parts).some((kit) => kit.contains.some((inside) => inside.part === part.id));
  return inKit ? refuse('kit-in-kit', { id: part.id }, ['contains']) : ok(null);
}

/**
 * A grade is no approval; nothing meets two specifications that never go together, and two that are to be asked about only where somebody
 * says so of both.
 */
export function checkMeets(facts: Facts, part: Part): Result<unknown> {
  for (const [at, { specification, basis }] of part.stated.entries()) {
    const asked = facts.get(specifications, specification);
    const approval = asked?.asks.find(({ kind }) => kind === 'approval');
    if (approval !== undefined && basis === 'grade') return refuse('grade-is-no-approval', { part: part.name, specification: asked?.name ?? specification, approval: approval.text }, ['stated', at, 'basis']);
  }
  const rules = rulesWithin(facts, part.meets);
  const open = rules.filter(({ rule, between }) => rule === 'never' || !between.every((id) => part.stated.some((one) => one.specification === id)));
  const worst = gravest(open);
  if (worst === null) return ok(null);
  const [a, b] = worst.between.map((id) => facts.get(specifications, id)?.name ?? id);
  return refuse(worst.rule === 'never' ? 'meets-both-never' : 'meets-both-by-whom', { part: part.name, a: a ?? '', b: b ?? '', why: say(worst.why) }, ['meets']);
}
