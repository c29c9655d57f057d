import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { comingSupply } from '../parts/coming-supply.ts';
import { parts, statementOf } from '../parts/part.ts';
import { partsSettings } from '../parts/parts-settings.ts';
import { specifications } from '../parts/specification.ts';
import { suppliers } from '../parts/supplier.ts';
import type { Message } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { money } from '../sessions/plan-why.ts';
import type { ProposedOrder } from './order-lines.ts';
import { spareNotes } from './order-spare.ts';
import type { OrderView } from './order-view-schema.ts';

/** What the words of a proposal are made from. */
type Worded = Pick<OrderView, 'currency' | 'status' | 'totalMinor' | 'boundMinor' | 'needs' | 'orders' | 'perCar' | 'savedMinor' | 'perSupplier' | 'cheapestSupplier' | 'preferences' | 'toolsLacking' | 'terms'>;

/** What a proposal comes to, how far it is proven, and what it is held against. */
export function orderProof(view: Worded): readonly Message[] {
  const sum = (minor: number) => money(minor, view.currency);
  const dearer = view.preferences.some((one) => one.taken && one.moreMinor !== 0);
  const proven: Message = view.status === 'optimal' ? { key: dearer ? 'order-proven-preferred' : 'order-proven', values: {} } : { key: 'order-best-found', values: { bound: sum(view.boundMinor) } };
  const unmet = unmetHeadline(view);
  if (unmet !== null && (unmet.none || view.orders.length === 0)) return [unmet.said];
  return [...(unmet === null ? [] : [unmet.said]), { key: 'order-total', values: { total: sum(view.totalMinor) } }, proven, ...(view.perCar.cars.length > 0 ? [againstCars(view, sum)] : []), ...againstSuppliers(view, sum), ...preferenceWords(view, sum)];
}

/** What cannot be met is said first, so that a small sum is not taken for a success; null where all is met. */
function unmetHeadline({ needs, terms }: Worded): { readonly none: boolean; readonly said: Message } | null {
  const unmet = needs.filter(isUnmet).length;
  if (unmet === 0) return null;
  const none = unmet === needs.length;
  return { none, said: { key: `order-${none ? 'none' : 'some'}-unmet${terms.arriveBy === null ? '' : '-by'}`, values: { all: needs.length, unmet, by: terms.arriveBy } } };
}

function isUnmet({ state }: Worded['needs'][number]): boolean {
  return state === 'none-in-time' || state === 'not-enough';
}

/** What became of each preference; that a second choice was taken for nothing more goes without saying. */
function preferenceWords({ preferences }: Worded, sum: (minor: number) => string): readonly Message[] {
  const isFirst = (at: number) => preferences.findIndex((one) => one.specification === preferences[at]?.specification) === at;
  return preferences.filter((one, at) => isFirst(at) || !one.taken || one.moreMinor !== 0).map((one): Message => {
    const values = { part: one.partName, specification: one.specificationName, more: one.moreMinor === null ? null : sum(one.moreMinor) };
    if (one.taken) return { key: one.moreMinor === 0 ? 'order-preferred-free' : 'order-preferred', values };
    return { key: one.moreMinor === null ? 'order-preferred-not-had' : 'order-preferred-too-dear', values };
  });
}

function againstCars(view: Worded, sum: (minor: number) => string): Message {
  if (view.savedMinor === null) return { key: 'order-saving-unknown', values: {} };
  const values = { alone: sum(view.perCar.totalMinor), saved: sum(view.savedMinor) };
  return { key: view.savedMinor > 0 ? 'order-saves' : 'order-saves-nothing', values };
}

function againstSuppliers(view: Worded, sum: (minor: number) => string): readonly Message[] {
  const { cheapestSupplier: one } = view;
  if (one === null) return view.perSupplier.length === 0 ? [] : [{ key: 'order-no-supplier-alone', values: {} }];
  const more = one.totalMinor - view.totalMinor;
  return [{ key: more > 0 ? 'order-one-supplier-dearer' : 'order-one-supplier-same', values: { supplier: one.supplierName, total: sum(one.totalMinor), more: sum(Math.max(0, more)) } }];
}

/** What to look at before ordering: sessions whose parts come too late, old prices, what is overdue, tools, what is merged on whose word. */
export function orderNotes(proposed: ProposedOrder, view: Worded): readonly Message[] {
  return [...lateForSessions(view), ...unmetNotes(proposed, view), ...spareNotes(proposed, view), ...overdueNotes(proposed), ...staleNote(proposed, view), ...numberNotes(view), ...mergedNotes(proposed), ...toolNotes(proposed, view)];
}

function lateForSessions(view: Worded): readonly Message[] {
  const late = view.needs.filter((need) => need.tooLateForSession);
  return late.map((need) => ({
    key: need.readyOn === null ? 'order-note-session-without' : 'order-note-session-late',
    values: { car: need.carName, item: need.itemName, specification: need.specificationName, day: need.session?.day ?? null, on: need.readyOn },
  }));
}

function unmetNotes({ facts }: ProposedOrder, view: Worded): readonly Message[] {
  return view.needs.filter(isUnmet).map((need): Message => {
    const terms = termsSaid(facts, view, need);
    const values = { car: need.carName, item: need.itemName, specification: need.specificationName, by: need.neededBy, terms };
    return { key: terms === '' ? `order-note-${need.state}` : 'order-note-unmet-on-terms', values };
  });
}

/** The terms asked for that may be why a need is not met. @example 'from South Stores alone, with nothing left over' */
function termsSaid(facts: Facts, { terms }: Worded, { neededBy }: Worded['needs'][number]): string {
  const asked: readonly (Message | null)[] = [
    terms.onlySupplier === null ? null : { key: 'terms-only-supplier', values: { supplier: facts.get(suppliers, terms.onlySupplier)?.name ?? terms.onlySupplier } },
    terms.noLeftovers ? { key: 'terms-no-leftovers', values: {} } : null,
    terms.arriveBy === neededBy ? { key: 'terms-arrive-by', values: {} } : null,
  ];
  return asked.flatMap((one) => (one === null ? [] : [say(one)])).join(', ');
}

function overdueNotes({ facts, today }: ProposedOrder): readonly Message[] {
  const overdue = comingSupply(facts, today).filter((one) => one.overdue);
  const isTogether = (one: (typeof overdue)[number]) => (other: (typeof overdue)[number]) => other.supplier === one.supplier && other.expectedOn === one.expectedOn;
  return overdue.filter((one, at) => overdue.findIndex(isTogether(one)) === at).map((one) => {
    const names = overdue.filter(isTogether(one)).map(({ line }) => facts.get(parts, line.part)?.name ?? line.part);
    return { key: 'order-note-overdue', values: { supplier: facts.get(suppliers, one.supplier)?.name ?? one.supplier, part: firstOf(names), date: one.expectedOn } };
  });
}

/** The first of many names, and how many more there are. @example firstOf(['a', 'b', 'c', 'd', 'e']) //=> 'a, b, c and 2 more' */
function firstOf(names: readonly string[]): string {
  const [different, most] = [[...new Set(names)], 3];
  const first = different.slice(0, most).join(', ');
  return different.length <= most ? first : say({ key: 'first-and-more', values: { first, more: different.length - most } });
}

function staleNote({ facts }: ProposedOrder, view: Worded): readonly Message[] {
  const stale = view.orders.flatMap((order) => order.lines).filter((line) => line.stale).length;
  return stale === 0 ? [] : [{ key: 'order-note-stale', values: { count: stale, days: partsSettings(facts).staleAfterDays } }];
}

function numberNotes(view: Worded): readonly Message[] {
  return view.orders.flatMap((order) => order.lines).flatMap((line) => (line.numberNow === null ? [] : [{ key: 'order-note-superseded', values: { part: line.partName, number: line.number, now: line.numberNow } }]));
}

/** A part bought for two specifications stands in for both on somebody's word. */
function mergedNotes({ facts, needs, answer }: ProposedOrder): readonly Message[] {
  const byPart = new Map<string, Set<string>>();
  for (const row of answer.allocation) {
    const spec = needs.find((one) => one.need.id === row.need)?.need.spec;
    if (spec !== undefined) byPart.set(row.part, (byPart.get(row.part) ?? new Set()).add(spec));
  }
  return [...byPart].filter(([, specs]) => specs.size > 1).flatMap(([id, specs]) => {
    const part = facts.get(parts, id);
    if (part === null) return [];
    return [...specs].map((spec): Message => {
      const { by, source } = statementOf(part, spec);
      const values = { part: part.name, specification: facts.get(specifications, spec)?.name ?? spec, by: say({ key: `stated-by-${by}`, values: {} }), source };
      return { key: source === null ? 'order-note-merged' : 'order-note-merged-source', values };
    });
  });
}

function toolNotes({ facts }: ProposedOrder, view: Worded): readonly Message[] {
  return view.toolsLacking.map((tool) => ({
    key: tool.why === 'missing' ? 'order-note-tool-missing' : 'order-note-tool-borrowed',
    values: { tool: tool.name, lender: tool.lender, until: tool.until, items: firstOf(tool.items.map(({ item }) => taskName(facts, item))) },
  }));
}

/** @example taskName(facts, 'pip-oil') //=> 'Pip: engine oil and filter' */
function taskName(facts: Facts, id: string): string {
  const item = facts.get(serviceItems, id);
  return item === null ? id : `${facts.get(cars, item.car)?.name ?? item.car}: ${item.name}`;
}
