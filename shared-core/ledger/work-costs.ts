import { serviceItems } from '../care/service-item.ts';
import { sameName } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { lots } from '../parts/lot.ts';
import { parts } from '../parts/part.ts';
import { taskTools } from '../parts/tool.ts';
import type { RecordLine, WorkRecord } from '../records/work-record.ts';
import type { QuotedThing } from './held-quote.ts';
import { ownMoney } from './own-money.ts';
import { timeValue } from './own-time.ts';
import type { Cost } from './posting.ts';

/** What something cost, told apart. Minor units. */
export interface CostParts {
  readonly partsMinor: number;
  readonly consumablesMinor: number;
  readonly toolsMinor: number;
  readonly otherMinor: number;
  /** One's own minutes at one's own rate. */
  readonly timeMinor: number;
}

/** A cost of work and the things done that it was for together; null where some of it is not known. */
export interface WorkCost {
  readonly things: readonly string[];
  readonly cost: CostParts | null;
}

/** A thing that was done: of the quote where it names the same, else of the record alone. */
export interface DoneThing {
  readonly id: string;
  readonly text: string;
}

/** What was done by some records, and what each thing, or several together, cost. */
export interface DoneWork {
  readonly done: readonly DoneThing[];
  readonly costs: readonly WorkCost[];
}

const NOTHING: CostParts = { partsMinor: 0, consumablesMinor: 0, toolsMinor: 0, otherMinor: 0, timeMinor: 0 };

/**
 * What records of work at home cost, thing by thing where that is known: a part that only one of the items takes, a line that is said to
 * be for one item, a tool that only one takes, minutes of a line. What is for none by itself is for all that the record did together.
 * Where a record says nothing of money, what was put in costs what nobody knows, and so does what somebody else paid.
 *
 * @param costs of the whole ledger; those of the records are taken
 */
export function doneWork(facts: Facts, records: readonly WorkRecord[], things: readonly QuotedThing[], costs: readonly Cost[], hourMinor: number): DoneWork {
  const own = ownMoney(facts);
  const worked = records.map((record) => {
    const lines = record.lines.map((line, at) => ({ line, id: thingOf(line, things) ?? `${record.id}/${at}` })).filter(({ line }) => line.outcome !== 'not-done');
    return { record, lines };
  });
  const done = new Map(worked.flatMap(({ lines }) => lines.map(({ line, id }) => [id, { id, text: line.name }] as const)));
  return { done: [...done.values()], costs: worked.flatMap(({ record, lines }) => (lines.length === 0 ? [] : costsOf(facts, record, lines, costs, hourMinor, own(record, record.date)))) };
}

interface LineOfThing {
  readonly line: RecordLine;
  readonly id: string;
}

function thingOf(line: RecordLine, things: readonly QuotedThing[]): string | null {
  const same = things.find((thing) => (thing.item === null ? sameName(thing.text, line.name) : thing.item === line.item));
  return same?.id ?? null;
}

function costsOf(facts: Facts, record: WorkRecord, lines: readonly LineOfThing[], costs: readonly Cost[], hourMinor: number, isOwn: boolean): readonly WorkCost[] {
  const all = lines.map((one) => one.id);
  const of = (found: readonly LineOfThing[]) => (found.length === 0 ? all : found.map((one) => one.id));
  const paid = costs.filter((cost) => cost.source.kind === 'record' && cost.source.id === record.id).map((cost): WorkCost => ({ things: of(linesOf(facts, lines, cost)), cost: asParts(cost) }));
  const unknown = record.lotsUsed.flatMap((use): WorkCost[] => {
    const lot = facts.get(lots, use.lot);
    return lot?.paidMinor == null ? [{ things: of(taking(facts, lines, lot?.part ?? '')), cost: null }] : [];
  });
  // Where an hour counts something, minutes that nobody wrote down are a cost that nobody knows.
  const own = record.place === 'home' && hourMinor > 0 ? lines.map(({ line, id }): WorkCost => ({ things: [id], cost: line.minutes === null ? null : { ...NOTHING, timeMinor: timeValue(line.minutes, hourMinor) } })) : [];
  return [...lines.map((one): WorkCost => ({ things: [one.id], cost: isOwn && isSaid(facts, record, one.line) ? NOTHING : null })), ...paid, ...unknown, ...own];
}

/** Whether a record says what a line of it cost, be it nothing: by its amounts, by lots for all that the item needs, or as a check that needs nothing. */
function isSaid(facts: Facts, record: WorkRecord, line: RecordLine): boolean {
  if (record.costs.length > 0 || record.printedTotalMinor !== null) return true;
  if (record.place === 'garage') return false;
  const needs = (line.item === null ? null : facts.get(serviceItems, line.item))?.needs ?? [];
  if (needs.length === 0) return line.work === 'check' || record.lotsUsed.length > 0;
  const met = new Set(record.lotsUsed.flatMap((use) => facts.get(parts, facts.get(lots, use.lot)?.part ?? '')?.meets ?? []));
  return needs.every((need) => met.has(need.specification));
}

function linesOf(facts: Facts, lines: readonly LineOfThing[], cost: Cost): readonly LineOfThing[] {
  if (cost.item != null) return lines.filter(({ line }) => line.item === cost.item);
  if (cost.of === null) return [];
  if (cost.kind === 'tools') return lines.filter(({ line }) => line.item !== null && facts.get(taskTools, line.item)?.tools.includes(cost.of ?? ''));
  return taking(facts, lines, cost.of);
}

function taking(facts: Facts, lines: readonly LineOfThing[], part: string): readonly LineOfThing[] {
  const meets = facts.get(parts, part)?.meets ?? [];
  return lines.filter(({ line }) => line.item !== null && (facts.get(serviceItems, line.item)?.needs ?? []).some((need) => meets.includes(need.specification)));
}

function asParts({ kind, minor }: Cost): CostParts {
  if (kind === 'parts') return { ...NOTHING, partsMinor: minor };
  if (kind === 'consumables') return { ...NOTHING, consumablesMinor: minor };
  return kind === 'tools' ? { ...NOTHING, toolsMinor: minor } : { ...NOTHING, otherMinor: minor };
}

/** What several costs come to. */
export function addParts(costs: readonly CostParts[]): CostParts {
  const sum = (field: keyof CostParts) => costs.reduce((total, one) => total + one[field], 0);
  return { partsMinor: sum('partsMinor'), consumablesMinor: sum('consumablesMinor'), toolsMinor: sum('toolsMinor'), otherMinor: sum('otherMinor'), timeMinor: sum('timeMinor') };
}

/** All of a cost together. */
export function wholeCost({ partsMinor, consumablesMinor, toolsMinor, otherMinor, timeMinor }: CostParts): number {
  return partsMinor + consumablesMinor + toolsMinor + otherMinor + timeMinor;
}
