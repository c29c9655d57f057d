import { quoteGroups } from '../work/quote-groups.ts';
import type { HeldQuote } from './held-quote.ts';
import { addParts, wholeCost, type CostParts, type DoneWork } from './work-costs.ts';

/** Things that can only be compared together: what was asked for them, and what doing them cost. Minor units. */
export interface LikeGroup {
  /** Lines of the quote, by their place in it. */
  readonly lines: readonly number[];
  /** What the quote covers of it, and what was done of it. */
  readonly quoted: readonly string[];
  readonly done: readonly string[];
  readonly quotedMinor: number | null;
  readonly cost: CostParts | null;
  /** Quote less cost; null where the two are not for the same. */
  readonly savedMinor: number | null;
  /** Why there is no sum: the price covers what was not done, or names nothing; the work holds what nobody quoted; or a side is not known. */
  readonly why: 'not-done' | 'covers-nothing' | 'not-quoted' | 'no-price' | 'no-cost' | null;
}

/** A quote held against work. */
export interface LikeForLike {
  readonly groups: readonly LikeGroup[];
  /** What was done and the quote says nothing of: nothing is claimed on it. */
  readonly unquoted: readonly { readonly things: readonly string[]; readonly cost: CostParts | null }[];
  /** What the groups with a sum save together; null where there is none. */
  readonly savedMinor: number | null;
}

interface Group {
  readonly lines: readonly number[];
  readonly quoted: ReadonlySet<string>;
  readonly done: ReadonlySet<string>;
  readonly prices: readonly (number | null)[];
  readonly costs: readonly (CostParts | null)[];
}

/**
 * What was saved by doing work in place of a quote, like for like: prices and costs are joined until each group's prices cover just what its
 * costs were for; only there is a sum. A price that also covers a line not done gives none, and what nobody quoted is listed as unquoted.
 *
 * Source: DESIGN section 4, "Like-for-like saving".
 */
export function likeForLike(quote: Pick<HeldQuote, 'lines' | 'totalMinor' | 'things'>, work: DoneWork): LikeForLike {
  const did = new Set(work.done.map((one) => one.id));
  const priced = quoteGroups(wholeQuote(quote)).map(({ lines, covers, minor }): Group => ({ lines, quoted: new Set(covers), done: new Set(covers.filter((id) => did.has(id))), prices: [minor], costs: [] }));
  const costed = work.costs.map(({ things, cost }): Group => ({ lines: [], quoted: new Set(), done: new Set(things), prices: [], costs: [cost] }));
  const joined = [...priced, ...costed].reduce<readonly Group[]>(joinInto, []);
  const groups = joined.filter((one) => one.prices.length > 0).map(compared).sort((a, b) => (a.lines[0] ?? 0) - (b.lines[0] ?? 0));
  const sums = groups.flatMap((one) => one.savedMinor ?? []);
  return {
    groups,
    unquoted: joined.filter((one) => one.prices.length === 0).map((one) => ({ things: [...one.done], cost: costOf(one) })),
    savedMinor: sums.length === 0 ? null : sums.reduce((sum, one) => sum + one, 0),
  };
}

/** A sum without lines is one price for all that it was named for, and a discount that names nothing is one on all of it. */
function wholeQuote({ lines, totalMinor, things }: Pick<HeldQuote, 'lines' | 'totalMinor' | 'things'>): Pick<HeldQuote, 'lines' | 'totalMinor'> {
  const all = things.map((one) => one.id);
  if (lines.length === 0) return { lines: [{ text: '-', covers: all, amountMinor: totalMinor }], totalMinor };
  return { lines: lines.map((line) => (line.covers.length === 0 && (line.amountMinor ?? 0) < 0 ? { ...line, covers: all } : line)), totalMinor };
}

function joinInto(groups: readonly Group[], one: Group): readonly Group[] {
  const touching = groups.filter((group) => [...one.quoted, ...one.done].some((id) => group.quoted.has(id) || group.done.has(id)));
  const whole = [...touching, one].reduce((all, each) => ({
    lines: [...all.lines, ...each.lines], quoted: new Set([...all.quoted, ...each.quoted]), done: new Set([...all.done, ...each.done]), prices: [...all.prices, ...each.prices], costs: [...all.costs, ...each.costs],
  }));
  return [...groups.filter((group) => !touching.includes(group)), whole];
}

function compared(group: Group): LikeGroup {
  const quotedMinor = group.prices.every((price) => price !== null) ? group.prices.reduce((sum, price) => sum + price, 0) : null;
  const cost = costOf(group);
  const why = hindrance(group, quotedMinor, cost);
  const savedMinor = why === null && quotedMinor !== null && cost !== null ? quotedMinor - wholeCost(cost) : null;
  return { lines: [...group.lines].sort((a, b) => a - b), quoted: [...group.quoted], done: [...group.done], quotedMinor, cost, savedMinor, why };
}

function hindrance({ quoted, done }: Group, quotedMinor: number | null, cost: CostParts | null): LikeGroup['why'] {
  if (quoted.size === 0) return 'covers-nothing';
  if ([...quoted].some((id) => !done.has(id))) return 'not-done';
  if ([...done].some((id) => !quoted.has(id))) return 'not-quoted';
  if (quotedMinor === null) return 'no-price';
  return cost === null ? 'no-cost' : null;
}

function costOf({ costs }: Group): CostParts | null {
  const known = costs.filter((cost) => cost !== null);
  return known.length < costs.length ? null : addParts(known);
}
