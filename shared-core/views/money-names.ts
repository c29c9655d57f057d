import { obligations } from '../care/obligation.ts';
import { renewals } from '../care/renewal.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import type { Cost, MoneySource } from '../ledger/posting.ts';
import { yearlyFuels } from '../ledger/yearly-fuel.ts';
import { lots } from '../parts/lot.ts';
import { orders } from '../parts/order.ts';
import { parts } from '../parts/part.ts';
import { suppliers } from '../parts/supplier.ts';
import { tools } from '../parts/tool.ts';
import { workRecords } from '../records/work-record.ts';
import { say } from '../result/words/say.ts';

/** What a part is called. */
export function partName(facts: Facts, part: string): string {
  return facts.get(parts, part)?.name ?? part;
}

/** What a car is called. */
export function carName(facts: Facts, car: string): string {
  return facts.get(cars, car)?.name ?? car;
}

/** What money is known from, in a few words. */
export function sourceName(facts: Facts, { kind, id }: MoneySource): string {
  if (kind === 'record') return facts.get(workRecords, id)?.title ?? id;
  if (kind === 'lot') return partName(facts, facts.get(lots, id)?.part ?? id);
  if (kind === 'tool') return facts.get(tools, id)?.name ?? id;
  if (kind === 'fuel') return say({ key: 'ledger-fuel-of', values: { year: facts.get(yearlyFuels, id)?.year ?? null } });
  if (kind === 'order') return orderName(facts, id);
  const duty = facts.get(obligations, facts.get(renewals, id)?.obligation ?? id);
  return duty === null ? id : (duty.name ?? say({ key: `obligation-${duty.kind}`, values: {} }));
}

/** What a cost was for: the source, and the part that came off the shelf. */
export function costText(facts: Facts, cost: Cost): string {
  const name = sourceName(facts, cost.source);
  if (cost.of === null || cost.source.kind === 'lot') return name;
  return `${name}: ${cost.kind === 'tools' ? (facts.get(tools, cost.of)?.name ?? cost.of) : partName(facts, cost.of)}`;
}

function orderName(facts: Facts, id: string): string {
  const order = facts.get(orders, id);
  if (order === null) return id;
  const supplier = facts.get(suppliers, order.supplier)?.name ?? order.supplier;
  return say({ key: 'ledger-order-of', values: { supplier, date: order.placedOn } });
}
