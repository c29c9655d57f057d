import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { FieldsRead } from './read-fields.ts';

type Cost = NonNullable<RequestOf<'record.add'>['costs']>[number];
export type CostKind = Cost['kind'];

/** One amount of money. */
export interface CostDraft {
  readonly kind: CostKind;
  readonly text: string;
  readonly amount: string;
  /** The one item it was for; none: for all that was done. */
  readonly item?: string;
}

/** Reads the amounts of a form; `at` stands before their paths. An item that is not among those done is left out. */
export function readCosts(costs: readonly CostDraft[], read: FieldsRead, currency: string, at = '', items: readonly string[] = []): Cost[] {
  return costs.map(({ kind, text, amount, item = '' }, index) => ({ kind, text, amountMinor: read.money(`${at}costs.${index}.amountMinor`, amount, currency), ...(items.includes(item) ? { item } : {}) }));
}
