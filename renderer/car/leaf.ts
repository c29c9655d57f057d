/** The leaves of a car's file, in the order in which the strip shows them. */
export const LEAVES = ['care', 'intake', 'services', 'card', 'distance', 'wear'] as const;
/** One leaf of a car's file; `care` is the one on top. */
export type Leaf = (typeof LEAVES)[number];

/** The leaf that an address names, or the one on top. */
export function leafNamed(name: string | null): Leaf {
  return LEAVES.find((leaf) => leaf === name) ?? 'care';
}

/** Where a leaf of a car is found. */
export function leafAddress(car: string, leaf: Leaf): string {
  return leaf === 'care' ? `/car/${car}` : `/car/${car}/${leaf}`;
}

/** Where on a car's file a place of a kind stands: what is measured out by distance on its own leaf, else where the address says. */
export function leafOfPlace(kind: string): Leaf {
  return kind === 'allowance' ? 'distance' : leafNamed(kind);
}
