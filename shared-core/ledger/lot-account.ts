import type { Lot } from '../parts/lot.ts';
import { thousandths } from '../records/lot-movements.ts';
import type { WorkRecord } from '../records/work-record.ts';
import { lotSteps, type LotStep, type LotStory } from './lot-movements.ts';
import { NO_MONEY, sumOf, type Account, type Balance, type Cost, type CostSide } from './posting.ts';
import { spread } from './spread.ts';

/** A lot's money, and what of it went back to the supplier: that is the order's again. */
export interface LotAccount extends Account {
  readonly sentBackMinor: number;
}

/** What decides whose a lot's cost is. */
export interface LotSides {
  /** Whose a record's part is; null: it is not this household's money. */
  readonly ofRecord: (record: WorkRecord, part: string) => CostSide;
  /** The wish that the lot is put aside for. */
  readonly wish: string | null;
}

/**
 * What was paid for a lot, shared over all that went of it to the last minor unit: to the cars that used it, to nobody where it was lost,
 * wasted or counted away, back to its order where it was returned; the rest lies on the shelf. A lot of which nobody knows the cost has
 * none; that of an order is paid for with the order.
 */
export function lotAccount(lot: Lot, story: LotStory, sides: LotSides): LotAccount {
  if (lot.paidMinor === null) return { ...NO_MONEY, sentBackMinor: 0 };
  const source = { kind: 'lot', id: lot.id } as const;
  const steps = lotSteps(thousandths(lot.quantity), story);
  const shares = spread(lot.paidMinor, thousandths(lot.quantity), steps.map((step) => step.gone));
  const rows = steps.map((step, at): { readonly step: LotStep; readonly minor: number } => ({ step, minor: shares[at] ?? 0 })).filter((row) => row.minor !== 0);
  const costs = rows.flatMap(({ step, minor }): Cost[] => {
    const side = sideOf(step, lot, sides);
    return side === null ? [] : [{ on: step.on, minor, kind: 'parts', side, source: step.to.kind === 'record' ? { kind: 'record', id: step.to.record.id } : source, of: lot.part }];
  });
  const sentBackMinor = sumOf(rows.filter(({ step }) => isSentBack(step, lot)));
  const left = lot.paidMinor - sumOf(rows);
  const balance: Balance = { kind: sides.wish === null ? 'on-the-shelf' : 'for-a-wish', minor: left, source, of: lot.part };
  return {
    payments: lot.order === null && lot.paidMinor !== 0 ? [{ on: lot.receivedOn, minor: lot.paidMinor, source }] : [],
    costs,
    balances: left === 0 ? [] : [balance],
    sentBackMinor,
  };
}

/** Null: it went back to the supplier. */
function sideOf(step: LotStep, lot: Lot, sides: LotSides): CostSide | null {
  if (isSentBack(step, lot)) return null;
  if (step.to.kind === 'record') return sides.ofRecord(step.to.record, lot.part);
  if (step.to.kind === 'count') return { kind: 'gone', why: 'counted' };
  const { why, car } = step.to;
  if (why === 'returned') return { kind: 'gone', why: 'not-given-back' };
  if (why === 'used') return car === null ? { kind: 'gone', why } : { kind: 'car', car };
  return { kind: 'gone', why };
}

/** What is sent back of a lot that no order brought is simply gone: nobody says what comes for it. */
function isSentBack(step: LotStep, lot: Lot): boolean {
  return step.to.kind === 'taking' && step.to.why === 'returned' && lot.order !== null;
}
