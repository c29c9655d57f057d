import type { LedgerView } from '../../../shared-core/views/ledger-view-schema.ts';

type KindSums = LedgerView['cars'][number]['byKind'];
type Kind = keyof KindSums;

/** Kinds of costs as they are drawn together. */
export const KIND_GROUPS = ['parts', 'labour', 'duties', 'rest'] as const;
export type KindGroup = (typeof KIND_GROUPS)[number];

const GROUP_OF: Readonly<Record<Kind, KindGroup>> = {
  parts: 'parts', consumables: 'parts', labour: 'labour', 'roadworthiness-test': 'duties', 'road-tax': 'duties', insurance: 'duties', 'other-duty': 'duties',
  tools: 'rest', fee: 'rest', deposit: 'rest', discount: 'rest', other: 'rest', rounding: 'rest', fuel: 'rest',
};

/** Sums by group. @example groupSums({ parts: 3, insurance: 4 }).duties //=> 4 */
export function groupSums(byKind: KindSums): Readonly<Record<KindGroup, number>> {
  const sums = { parts: 0, labour: 0, duties: 0, rest: 0 };
  for (const [kind, minor] of Object.entries(byKind)) sums[GROUP_OF[kind as Kind]] += minor;
  return sums;
}
