/** The leaves of the Ledger screen. */
export const LEDGER_LEAVES = ['costs', 'ahead', 'quotes', 'wishes'] as const;
export type LedgerLeaf = (typeof LEDGER_LEAVES)[number];

/** The leaf of that name; the first where there is none. @example ledgerLeafNamed('quotes') //=> 'quotes' */
export function ledgerLeafNamed(name: string): LedgerLeaf {
  return LEDGER_LEAVES.find((leaf) => leaf === name) ?? 'costs';
}

/** Where a leaf stands. @example ledgerAddress('quotes') //=> '/ledger/quotes' */
export function ledgerAddress(leaf: LedgerLeaf): string {
  return leaf === 'costs' ? '/ledger' : `/ledger/${leaf}`;
}
