import type { Quote } from './booking.ts';

/** What a quote comes to, and whether its lines say the same. */
export interface QuoteSum {
  /** The sum as it was named; else that of its lines, where each has an amount. Minor units; null where neither is known. */
  readonly totalMinor: number | null;
  /** The sum of its lines; null where one of them has no amount. */
  readonly linesMinor: number | null;
  /** A sum was named and the lines add up to another. */
  readonly differs: boolean;
}

/**
 * Adds up a quote. A sum that was named is kept, though its lines add up to another.
 *
 * @example quoteSum({ lines: [{ amountMinor: 100 }, { amountMinor: 50 }], totalMinor: null }) //=> { totalMinor: 150, linesMinor: 150, differs: false }
 */
export function quoteSum({ lines, totalMinor }: Pick<Quote, 'lines' | 'totalMinor'>): QuoteSum {
  const amounts = lines.map((one) => one.amountMinor);
  const known = amounts.filter((one) => one !== null);
  const linesMinor = lines.length === 0 || known.length < amounts.length ? null : known.reduce((sum, one) => sum + one, 0);
  return { totalMinor: totalMinor ?? linesMinor, linesMinor, differs: totalMinor !== null && linesMinor !== null && totalMinor !== linesMinor };
}
