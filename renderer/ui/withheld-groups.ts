import type { RequestOf } from '../../shared-core/contract/contract.ts';

export type Withheld = NonNullable<RequestOf<'pack.write'>['withhold']>[number];

/** What is kept back from a pack, in three groups as a keeper thinks of them; a field by its name in the journal. */
export const WITHHELD_GROUPS: Readonly<Record<'prices' | 'names' | 'numbers', readonly Withheld[]>> = {
  prices: ['costs', 'printedTotalMinor', 'paidMinor', 'price', 'garagePrice', 'lotsUsed'],
  names: ['doneBy', 'approvedBy', 'placeName', 'reference', 'method', 'note', 'why', 'text'],
  numbers: ['registration', 'vin', 'declaredAYear'],
};
