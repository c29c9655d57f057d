/** The leaves of the Handover screen, in the order of the work. */
export const HANDOVER_LEAVES = ['write', 'check', 'leave', 'seal'] as const;
export type HandoverLeaf = (typeof HANDOVER_LEAVES)[number];

/** The leaf of that name; the first where there is none. @example handoverLeafNamed('seal') //=> 'seal' */
export function handoverLeafNamed(name: string): HandoverLeaf {
  return HANDOVER_LEAVES.find((leaf) => leaf === name) ?? 'write';
}

/** Where a leaf stands. @example handoverAddress('check') //=> '/handover/check' */
export function handoverAddress(leaf: HandoverLeaf): string {
  return leaf === 'write' ? '/handover' : `/handover/${leaf}`;
}
