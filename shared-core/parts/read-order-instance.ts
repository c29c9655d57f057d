import { parseRequest } from '../result/parse-request.ts';
import { refuse, type Refusal, type Result } from '../result/result.ts';
import { FROM_SHELF, orderInstanceSchema, type OrderInstance } from './order-instance.ts';

type Path = readonly (string | number)[];

/**
 * An order instance from parsed JSON, with its defaults filled in. Refuses the first fault, with its path: a wrong shape (`not-understood`,
 * `unknown-field`, `not-a-date`, `not-an-amount`, `not-a-quantity`, `order-quantity-too-fine`), an id given twice (`id-twice`), one that names
 * nothing (`unknown-supplier`, `unknown-part`), a kit inside a kit (`kit-in-kit`), two prices for the same number of packs (`break-twice`), an
 * offer called as the shelf is (`reserved-id`).
 *
 * @example readOrderInstance({ suppliers: [], parts: [], offers: [], needs: [], shelf: [], orderOn: '2027-01-02' }) //=> ok
 */
export function readOrderInstance(value: unknown): Result<OrderInstance> {
  const read = parseRequest(orderInstanceSchema, value);
  if (!read.ok) return read;
  const fault = idsTwice(read.value) ?? unknownIds(read.value) ?? doubleMeanings(read.value);
  return fault === null ? read : { ok: false, refusal: fault };
}

function fault(code: string, values: Refusal['values'], path: Path): Refusal {
  return refuse(code, values, path).refusal;
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
    if (inner >= 0) return fault('kit-in-kit', { id: kit.contains[inner]?.part ?? '' }, ['parts', at, 'contains', inner, 'part']);
  }
  for (const [at, { id, breaks }] of instance.offers.entries()) {
    if (id === FROM_SHELF) return fault('reserved-id', { id }, ['offers', at, 'id']);
    const twice = breaks.findIndex(({ packs }, i) => breaks.slice(0, i).some((before) => before.packs === packs));
    if (twice >= 0) return fault('break-twice', { offer: id, packs: breaks[twice]?.packs ?? 0 }, ['offers', at, 'breaks', twice, 'packs']);
  }
  return null;
}
