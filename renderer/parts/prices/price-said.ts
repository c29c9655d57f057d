import type { RequestOf } from '../../../shared-core/contract/contract.ts';

/** What a person says of a price list. */
export type PriceSaid = Pick<RequestOf<'prices.preview'>, 'columns' | 'supplier' | 'dateOrder' | 'decimalMark' | 'hasHeader'>;
