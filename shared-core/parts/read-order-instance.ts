import type { z } from 'zod';
import { ok, refuse, type Refusal, type Result } from '../result/result.ts';
import { FROM_SHELF, orderInstanceSchema, type OrderInstance } from './order-instance.ts';

type Path = readonly (string | number)[];

/**
 * An order instance from parsed JSON, with its defaults filled in. Refuses, with the path of the first fault: a wrong shape
 * (`bad-order-instance`, `not-a-date`, `no-quantity`, `too-many-decimals`), an id given twice (`id-twice`), one that names nothing
 * (`unknown-supplier`, `unknown-part`), a kit inside a kit (`kit-in-kit`), two prices for the same number of packs (`break-twice`), an offer
 * called as the shelf is (`reserved-id`).
 *
 * @example readOrderInstance({ suppliers: [], parts: [], offers: [], needs: [], shelf: [], orderOn: '2027-01-02' }) //=> ok
 */
export function readOrderInstance(value: unknown): Result<OrderInstance> {
  const read = orderInstanceSchema.safeParse(value);
  if (!read.success) return { ok: false, refusal: refusalOf(read.error.issues[0]) };
  const fault = idsTwice(read.data) ?? unknownIds(read.data) ?? doubleMeanings(read.data);
  return fault === null ? ok(read.data) : { ok: false, refusal: fault };
}

function refusalOf(issue: z.core.$ZodIssue | undefined): Refusal {
  const path = (issue?.path ?? []).filter((step) => typeof step !== 'symbol');
  const field = path.join('.') || 'instance';
  const params: Readonly<Record<string, unknown>> = issue?.code === 'custom' ? (issue.params ?? {}) : {};
  const { code, value } = params;
  if (typeof code === 'string') return { code, values: { field, value: typeof value === 'string' ? value : null }, path };
  return { code: 'bad-order-instance', values: { field, problem: issue?.message ?? '' }, path };
}

function fault(code: string, values: Refusal['values'], path: Path): Refusal {
  const { refusal } = refuse(code, values, path);
  return refusal;
}

function idsTwice(instance: OrderInstance): Refusal | null {
  for (const list of ['suppliers', 'parts', 'offers', 'needs'] as const) {
    const seen = new Set<string>();
    for (const [at, { id }] of instance[list].entries()) {
      if (seen.has(id)) return fault('id-twice', { list, id }, [list, at, 'id']);
      seen.add(id);
    }
  }
  return null;
}

function unknownIds(instance: OrderInstance): Refusal | null {
  const suppliers = new Set(instance.suppliers.map((supplier) => supplier.id));
  const parts = new Set(instance.parts.map((part) => part.id));
  for (const [at, { supplier }] of instance.offers.entries()) {
    if (!suppliers.has(supplier)) return fault('unknown-supplier', { id: supplier }, ['offers', at, 'supplier']);
  }
  const named: readonly { part: string; path: Path }[] = [
    ...instance.parts.flatMap(({ contains }, at) => contains.map(({ part }, i) => ({ part, path: ['parts', at, 'contains', i, 'part'] }))),
    ...instance.offers.map(({ part }, at) => ({ part, path: ['offers', at, 'part'] })),
    ...instance.shelf.map(({ part }, at) => ({ part, path: ['shelf', at, 'part'] })),
  ];
  const unknown = named.find(({ part }) => !parts.has(part));
  return unknown === undefined ? null : fault('unknown-part', { id: unknown.part }, unknown.path);
}

function doubleMeanings(instance: OrderInstance): Refusal | null {
  const kits = new Set(instance.parts.filter((part) => part.contains.length > 0).map((part) => part.id));
  for (const [at, kit] of instance.parts.entries()) {
    const inner = kit.contains.findIndex(({ part }) => kits.has(part));
    if (inner >= 0) return fault('kit-in-kit', { kit: kit.id, part: kit.contains[inner]?.part ?? '' }, ['parts', at, 'contains', inner, 'part']);
  }
  for (const [at, { id, breaks }] of instance.offers.entries()) {
    if (id === FROM_SHELF) return fault('reserved-id', { id }, ['offers', at, 'id']);
    const twice = breaks.findIndex(({ packs }, i) => breaks.slice(0, i).some((before) => before.packs === packs));
    if (twice >= 0) return fault('break-twice', { offer: id, packs: breaks[twice]?.packs ?? 0 }, ['offers', at, 'breaks', twice, 'packs']);
  }
  return null;
}
