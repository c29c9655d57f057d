import type { CarView } from '../../shared-core/views/car-view.ts';
import type { NameOrder } from '../ui/name-order.ts';

/** A car's items as they are looked for in a long form: by their names. */
export function itemsByName({ items }: CarView, byName: NameOrder): readonly CarView['items'][number]['item'][] {
  return items.map(({ item }) => item).sort((a, b) => byName(a.name, b.name));
}
