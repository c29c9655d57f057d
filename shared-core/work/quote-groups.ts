import type { Quote } from './booking.ts';
import { quoteSum } from './quote-sum.ts';

/** What of a quote can only be compared together: its lines, the lines wanted that they cover, and their price in minor units (null: not known). */
export interface QuoteGroup {
  readonly lines: readonly number[];
  readonly covers: readonly string[];
  readonly minor: number | null;
}

/**
 * Divides a quote into groups that share no line wanted: each has a price that covers its own lines and no other. Where a sum was named
 * that its lines do not add up to, or where a line has no amount of its own, what a line costs is not known: all is one group.
 */
export function quoteGroups(quote: Pick<Quote, 'lines' | 'totalMinor'>): readonly QuoteGroup[] {
  const { totalMinor, linesMinor, differs } = quoteSum(quote);
  const named = quote.totalMinor !== null && (differs || linesMinor === null);
  if (named) return [{ lines: quote.lines.map((_, at) => at), covers: [...new Set(quote.lines.flatMap((one) => one.covers))], minor: totalMinor }];
  return quote.lines.reduce<readonly QuoteGroup[]>((groups, line, at) => {
    const shared = groups.filter((group) => line.covers.some((id) => group.covers.includes(id)));
    const joined = shared.reduce<QuoteGroup>((all, one) => ({ lines: [...all.lines, ...one.lines], covers: [...all.covers, ...one.covers], minor: add(all.minor, one.minor) }), { lines: [], covers: [], minor: 0 });
    const whole = { lines: [...joined.lines, at].sort((a, b) => a - b), covers: [...new Set([...joined.covers, ...line.covers])], minor: add(joined.minor, line.amountMinor) };
    return [...groups.filter((group) => !shared.includes(group)), whole].sort((a, b) => (a.lines[0] ?? 0) - (b.lines[0] ?? 0));
  }, []);
}

/** A sum of which a part is not known is not known. */
function add(one: number | null, other: number | null): number | null {
  return one === null || other === null ? null : one + other;
}
