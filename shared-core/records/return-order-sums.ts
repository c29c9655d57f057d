import { findHousehold } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { agreedMinor, neverComes, owedForPacks, type PacksBack } from '../parts/order-owed.ts';
import { refundedMinor, type OrderReturn, type ReturnedLine } from '../parts/order-return.ts';
import type { StandingOrder } from '../parts/order-standing.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { money } from '../sessions/plan-why.ts';
import type { GoodsBack } from './return-order-lots.ts';

/** What is to come back for a return where nobody said otherwise: no deposit twice, and delivery only where nothing of the order ever comes. */
export function expectedBack(standing: StandingOrder, asked: readonly ReturnedLine[], goods: readonly GoodsBack[]): number {
  const sums = standing.lines.map((one) => {
    const packs = (what: ReturnedLine['what']) => asked.filter((row) => row.line === one.line.id && row.what === what).reduce((sum, row) => sum + row.packs, 0);
    const sent = goods.find((row) => row.standing === one);
    const back: PacksBack = { good: sent?.good ?? 0, aside: sent?.aside ?? 0, claimed: packs('claim'), deposits: packs('deposit') };
    return { minor: owedForPacks(standing.order, one, back), settled: one.line.packs === neverComes(one) && one.claimed + back.claimed === one.line.packs };
  });
  const nothingCame = sums.every((one) => one.settled);
  return Math.min(sums.reduce((sum, one) => sum + one.minor, 0) + (nothingCame ? standing.order.deliveryMinor : 0), leftToComeBack(standing, null));
}

/** No more is expected than was agreed for those packs, with delivery, nor than the whole order still has to give back. */
export function checkExpected(facts: Facts, standing: StandingOrder, back: OrderReturn): Result<unknown> {
  return checkSum(facts, back.refundExpectedMinor, mostBack(standing, back, null), ['refundExpectedMinor']);
}

/** No more comes back for a return than was agreed for its packs, with delivery, nor than the whole order still has to give back. */
export function checkRefunded(facts: Facts, standing: StandingOrder, back: OrderReturn): Result<unknown> {
  return checkSum(facts, refundedMinor(back), mostBack(standing, back, back.id), ['minor']);
}

function checkSum(facts: Facts, minor: number, most: number, path: readonly string[]): Result<unknown> {
  const household = findHousehold(facts);
  if (!household.ok) return household;
  return minor > most ? refuse('refund-over-paid', { most: money(most, household.value.currency) }, path) : ok(null);
}

function mostBack(standing: StandingOrder, back: OrderReturn, itself: string | null): number {
  const worth = back.lines.reduce((sum, row) => {
    const line = standing.order.lines.find((one) => one.id === row.line);
    return line === undefined ? sum : sum + row.packs * (line.depositMinor + (row.what === 'deposit' ? 0 : line.priceMinor));
  }, standing.order.deliveryMinor);
  return Math.min(worth, leftToComeBack(standing, itself));
}

/** What of the whole order has neither come back nor is expected for another return. */
function leftToComeBack({ order, returns }: StandingOrder, itself: string | null): number {
  const elsewhere = returns.filter((one) => one.id !== itself).reduce((sum, one) => sum + Math.max(one.refundExpectedMinor, refundedMinor(one)), 0);
  return Math.max(0, agreedMinor(order) - elsewhere);
}
