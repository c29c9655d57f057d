import type { CostLine, WorkRecord } from '../records/work-record.ts';
import { sumOf, type Account, type CostKind, type CostSide } from './posting.ts';

/** One amount of a record as the ledger takes it. */
interface RecordAmount {
  readonly kind: CostKind;
  readonly minor: number;
  readonly item: string | null;
}

/**
 * What a record says was paid for it on its day. A printed total stands as it is: what its lines lack of it, or have too much, is
 * `rounding`; a total without lines is `other`. What came off the shelf was paid for when it was bought: such lines count only where none of
 * the lots that the record used says what it cost.
 *
 * @param sideOf whose the cost is, by the item that a line was for alone (null: by no single one)
 */
export function recordAccount(record: WorkRecord, shelfCostKnown: boolean, sideOf: (item: string | null) => CostSide): Account {
  const source = { kind: 'record', id: record.id } as const;
  const amounts = amountsOf(record, shelfCostKnown);
  return {
    payments: amounts.length === 0 ? [] : [{ on: record.date, minor: sumOf(amounts), source }],
    costs: amounts.map(({ kind, minor, item }) => ({ on: record.date, minor, kind, side: sideOf(item), source, of: null, item })),
    balances: [],
  };
}

/** What a record cost as it tells it: its printed total where there is one, else the sum of its lines; what came off the shelf beside it. */
export function toldCost(record: Pick<WorkRecord, 'costs' | 'printedTotalMinor'>): number {
  const shelf = record.costs.filter((line) => line.kind === 'shelf').reduce((sum, line) => sum + line.amountMinor, 0);
  const paid = record.printedTotalMinor ?? record.costs.filter((line) => line.kind !== 'shelf').reduce((sum, line) => sum + line.amountMinor, 0);
  return paid + shelf;
}

function amountsOf({ costs, printedTotalMinor }: WorkRecord, shelfCostKnown: boolean): readonly RecordAmount[] {
  const paid = costs.filter((line) => line.kind !== 'shelf').map(amountOf);
  const shelf = shelfCostKnown ? [] : costs.filter((line) => line.kind === 'shelf').map(amountOf);
  const rest = printedTotalMinor === null ? 0 : printedTotalMinor - sumOf(paid);
  const difference: readonly RecordAmount[] = rest === 0 ? [] : [{ kind: paid.length === 0 ? 'other' : 'rounding', minor: rest, item: null }];
  return [...paid, ...difference, ...shelf].filter(({ minor }) => minor !== 0);
}

function amountOf({ kind, amountMinor, item }: CostLine): RecordAmount {
  return { kind: kind === 'shelf' ? 'parts' : kind, minor: amountMinor, item: item ?? null };
}
