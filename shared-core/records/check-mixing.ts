import type { LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import type { FluidUse } from '../parts/fluid.ts';
import { lots } from '../parts/lot.ts';
import { mixRuleOf } from '../parts/mix-rule.ts';
import { parts, type Part } from '../parts/part.ts';
import { shelfTakings } from '../parts/shelf-taking.ts';
import { specifications } from '../parts/specification.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { standingLots } from './shelf-left.ts';
import { workRecords, type RecordLine } from './work-record.ts';

/** Lots used on a car on a day, by a record or by hand. */
export interface LotsUse {
  readonly car: string;
  readonly on: LocalDate;
  readonly lots: readonly string[];
  /** What the record replaced: a system changed over whole is asked about, not refused. */
  readonly lines: readonly Pick<RecordLine, 'item' | 'work'>[];
  /** The keeper was asked and is sure. */
  readonly sure: boolean;
}

/**
 * Refuses a use that would mix what never goes together, in one go or with what is in the car already; what only may not bear each other,
 * and what is past its date, is asked about.
 */
export function checkUse(facts: Facts, use: LotsUse): Result<null> {
  const used = use.lots.flatMap((id) => partOfLot(facts, id) ?? []);
  const late = standingLots(facts).find((one) => use.lots.includes(one.lot.id) && one.goodUntil !== null && one.goodUntil < use.on);
  if (late?.goodUntil != null && !use.sure) return refuse('lot-past-its-date', { lot: late.lot.id, date: late.goodUntil }, ['lotsUsed']);
  for (const [at, part] of used.entries()) {
    for (const other of used.slice(at + 1)) {
      const mixed = checkPair(facts, use, part, other, false);
      if (!mixed.ok) return mixed;
    }
    for (const there of lastInCar(facts, use, part)) {
      const mixed = checkPair(facts, use, part, there, changesOver(facts, use, part));
      if (!mixed.ok) return mixed;
    }
  }
  return ok(null);
}

function checkPair(facts: Facts, use: LotsUse, a: Part, b: Part, changedOver: boolean): Result<null> {
  const rule = mixRuleOf(facts, a, b);
  if (rule === null || (use.sure && (rule.rule === 'ask' || changedOver))) return ok(null);
  const asked = rule.rule === 'ask' || changedOver;
  return refuse(asked ? 'use-may-mix' : 'use-mixes', { a: a.name, b: b.name, car: facts.get(cars, use.car)?.name ?? use.car, why: say(rule.why) }, ['lotsUsed']);
}

function partOfLot(facts: Facts, id: string): Part | null {
  const lot = facts.get(lots, id);
  return lot === null ? null : facts.get(parts, lot.part);
}

/** The part last used on the car before, for each use of a fluid that this part serves. */
function lastInCar(facts: Facts, { car, on }: LotsUse, part: Part): readonly Part[] {
  const uses = usesOf(facts, part);
  if (uses.size === 0) return [];
  const byRecord = facts.ofCar(workRecords, car).flatMap((record) => record.lotsUsed.map((one) => ({ lot: one.lot, on: record.date })));
  const byHand = facts.all(shelfTakings).filter((one) => one.car === car && one.why === 'used');
  const before = [...byRecord, ...byHand].filter((one) => one.on <= on).sort((a, b) => (a.on < b.on ? 1 : -1));
  return [...uses].flatMap((fluid) => before.map((one) => partOfLot(facts, one.lot)).find((one) => one !== null && usesOf(facts, one).has(fluid)) ?? []);
}

function usesOf(facts: Facts, part: Part): ReadonlySet<FluidUse> {
  return new Set(part.meets.flatMap((id) => facts.get(specifications, id)?.fluid?.use ?? []));
}

/** Whether the record replaced an item that now asks for what this part meets. */
function changesOver(facts: Facts, { lines }: LotsUse, part: Part): boolean {
  return lines.some((line) => line.work === 'replace' && line.item !== null && facts.get(serviceItems, line.item)?.needs.some((need) => part.meets.includes(need.specification)) === true);
}
