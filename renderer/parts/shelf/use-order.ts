import type { LotView } from '../../../shared-core/views/parts-view-schema.ts';
import type { NameOrder } from '../../ui/name-order.ts';

/** Lots as they are to be used up: the oldest expiry of a part gives the part its place, and its lots stay together; what never expires comes last, by name. */
export function inUseOrder(shelf: readonly LotView[], byName: NameOrder): readonly LotView[] {
  const first = new Map<string, string>();
  for (const { lot, goodUntil } of shelf) {
    const known = first.get(lot.part) ?? NEVER;
    first.set(lot.part, goodUntil !== null && goodUntil < known ? goodUntil : known);
  }
  const of = (one: LotView) => first.get(one.lot.part) ?? NEVER;
  const use = (one: LotView) => one.useAs ?? 0;
  return [...shelf].sort((a, b) => (of(a) < of(b) ? -1 : of(a) > of(b) ? 1 : byName(a.partName, b.partName) || use(a) - use(b)));
}

/** After every date. */
const NEVER = '9999-12-31';
