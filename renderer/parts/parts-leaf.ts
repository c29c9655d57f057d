/** The leaves of the screen Parts, in the order in which the strip shows them. */
export const PARTS_LEAVES = ['needed', 'order', 'placed', 'shelf', 'tools', 'offers'] as const;
/** One leaf of the screen; `needed` is the one on top. */
export type PartsLeaf = (typeof PARTS_LEAVES)[number];

/** The leaf that an address names, or the one on top. */
export function partsPlaceNamed(name: string): PartsPlace {
  return name === 'prices' ? 'prices' : (PARTS_LEAVES.find((leaf) => leaf === name) ?? 'needed');
}

/** What is shown: a leaf, or the taking in of a price list, which belongs to the offers. */
export type PartsPlace = PartsLeaf | 'prices';

/** Where a leaf is found. */
export function partsLeafAddress(leaf: PartsLeaf): string {
  return leaf === 'needed' ? '/parts' : `/parts/${leaf}`;
}
