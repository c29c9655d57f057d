import { useLocationProperty } from 'wouter/use-browser-location';

/** The place on a screen that the address names behind its number sign; null where it names none. */
export function useSought(): string | null {
  const hash = useLocationProperty(() => window.location.hash, () => '');
  return hash.length > 1 ? decodeURIComponent(hash.slice(1)) : null;
}

/** Makes an element a place that can be gone to by its kind and id. @example placeOf('lot', 'oil-1').id //=> 'lot-oil-1' */
export function placeOf(kind: string, id: string): { readonly id: string; readonly tabIndex: -1; readonly 'data-place': true } {
  return { id: `${kind}-${id}`, tabIndex: -1, 'data-place': true };
}
