import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { FieldsRead } from './read-fields.ts';

type Cost = NonNullable<RequestOf<'record.add'>['costs']>[number];
export type CostKind = Cost['kind'];

/** One amount of money. */
export interface CostDraft {
  readonly kind: CostKind;
  readonly text: string;
  readonly amount: string;
}

/** Reads the amounts of a form; `at` stands before their paths. */
export function readCosts(costs: readonly CostDraft[], read: FieldsRead, currency: string, at = ''): Cost[] {
  return costs.map(({ kind, text, amount }, index) => ({ kind, text, amountMinor: read.money(`${at}costs.${index}.amountMinor`, amount, currency) }));
}
