import type { ProgramDraft, Term } from '../integer-program/program.ts';
import { must } from '../result/assert.ts';
import type { LotFacts, OrderFacts } from './order-facts.ts';
import type { NeedGroup } from './order-groups.ts';
import { FROM_SHELF } from './order-instance.ts';
import type { Take } from './order-model-needs.ts';
import type { PackVariables, Packs } from './order-model-packs.ts';
import { greatestDivisor } from './order-quantity.ts';

/** Binds what needs take to what packs and shelf hold, and to the suppliers used. */
export function addSupply(draft: ProgramDraft, facts: OrderFacts, packs: Packs, takes: readonly Take[]): void {
  const fromOffers = takes.filter(({ from }) => from !== FROM_SHELF);
  const gives = new Map(facts.offers.map(({ offer, gives }) => [offer.id, gives]));
  for (const same of grouped(fromOffers, ({ from, part }) => JSON.stringify([from, part]))) {
    const { from, part } = same[0] ?? neverEmpty();
    addPackRows(draft, same, gives.get(from)?.get(part) ?? 0, packs.get(from));
  }
  if (facts.instance.noLeftovers === true) addWholeRows(draft, facts, packs, fromOffers);
  addSupplierRows(draft, fromOffers, packs);
  const fromShelf = takes.filter(({ from }) => from === FROM_SHELF);
  for (const same of grouped(fromShelf, ({ part }) => part)) {
    const { part } = same[0] ?? neverEmpty();
    addShelfRows(draft, same, facts.lots.filter((lot) => lot.part === part));
  }
}

/**
 * All that is taken of a part from an offer is at most what its packs hold; of a pack that holds more than all want together, only that much
 * counts. A group that wants less than a pack holds takes no larger part of what it wants than of a pack.
 */
function addPackRows(draft: ProgramDraft, takes: readonly Take[], holds: number, variables: PackVariables | undefined): void {
  const wantedBy = ({ group }: Take) => group.units * group.count;
  const wanted = takes.reduce((sum, take) => sum + wantedBy(take), 0);
  const packsOf = (units: number) => (variables?.packs ?? []).map((at): Term => [at, -units]);
  addUnitsRow(draft, takes, packsOf(Math.min(holds, wanted)), 0);
  if (takes.length > 1) for (const take of takes) if (wantedBy(take) < holds) addUnitsRow(draft, [take], packsOf(wantedBy(take)), 0);
}

/** Where nothing may be left over: all that packs hold of a part is taken. (That what is taken fits into the packs has its rows already.) */
function addWholeRows(draft: ProgramDraft, facts: OrderFacts, packs: Packs, takes: readonly Take[]): void {
  for (const { offer, gives } of facts.offers) {
    const variables = packs.get(offer.id);
    if (variables === undefined) continue;
    for (const [part, holds] of gives) {
      const ours = takes.filter((take) => take.from === offer.id && take.part === part);
      addUnitsRow(draft, [], [...ours.map(({ variable, each }): Term => [variable, -each]), ...variables.packs.map((at): Term => [at, holds])], 0);
    }
  }
}

/** A group's share from one supplier is at most its use. */
function addSupplierRows(draft: ProgramDraft, takes: readonly Take[], packs: Packs): void {
  const numbers = new Map<NeedGroup, number>();
  const numberOf = (group: NeedGroup) => numbers.get(group) ?? numbers.set(group, numbers.size).size - 1;
  const withUse = takes.flatMap((take) => {
    const used = packs.get(take.from)?.used ?? null;
    return used === null ? [] : [{ take, used }];
  });
  for (const same of grouped(withUse, ({ take, used }) => `${numberOf(take.group)} ${used}`)) {
    const { take, used } = same[0] ?? neverEmpty();
    draft.row(-Infinity, [...same.map(({ take: { variable } }): Term => [variable, 1]), [used, -take.whole]], 0);
  }
}

/**
 * Stock that keeps until a day serves what is needed up to it. So for each day: what is taken for that day and after is at most the
 * stock that keeps so long; days with the same stock need only the earliest one's row.
 */
function addShelfRows(draft: ProgramDraft, takes: readonly Take[], lots: readonly LotFacts[]): void {
  const days = [...new Set(takes.map(byOf))].sort((a, b) => a - b);
  let before = NaN;
  for (const day of days) {
    const stock = lots.filter(({ expires }) => expires >= day).reduce((sum, { units }) => sum + units, 0);
    if (stock !== before) addUnitsRow(draft, takes.filter((take) => byOf(take) >= day), [], stock);
    before = stock;
  }
}

/** Members of a group may use the same lots, so any one's day says which. */
function byOf({ group }: Take): number {
  return must(group.members[0], 'member of a group').by;
}

/** units taken + others <= most, in the largest unit that keeps the coefficients whole. */
function addUnitsRow(draft: ProgramDraft, takes: readonly Take[], others: readonly Term[], most: number): void {
  const terms = [...takes.map(({ variable, each }): Term => [variable, each]), ...others];
  const unit = greatestDivisor([...terms.map(([, coefficient]) => coefficient), most]) || 1;
  draft.row(-Infinity, terms.map(([at, coefficient]): Term => [at, coefficient / unit]), most / unit);
}

function grouped<Item>(items: readonly Item[], key: (item: Item) => string): readonly (readonly Item[])[] {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const group = groups.get(key(item));
    if (group === undefined) groups.set(key(item), [item]);
    else group.push(item);
  }
  return [...groups.values()];
}

function neverEmpty(): never {
  throw new Error('Bug: an empty group');
}
