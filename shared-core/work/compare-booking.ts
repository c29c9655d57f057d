import type { Booking, CameBackLine, Quote } from './booking.ts';
import { quoteGroups, type QuoteGroup } from './quote-groups.ts';
import { quoteSum } from './quote-sum.ts';

/** What was quoted and what was charged for the same work; `why` says what hinders a comparison (null: both are known). */
export interface ComparedGroup extends QuoteGroup {
  readonly chargedMinor: number | null;
  readonly why: 'not-asked' | 'not-done' | 'not-said' | 'no-price' | 'no-charge' | null;
}

/** What was charged against a quote. All in minor units; null where it is not known. */
export interface ComparedQuote {
  readonly quotedMinor: number | null;
  readonly chargedMinor: number | null;
  /** All that the quote covers was done, and nothing else: then the two sums are for the same work. */
  readonly sameWork: boolean;
  readonly groups: readonly ComparedGroup[];
  /** Both sides of the groups that can be compared, added up; null where none can. */
  readonly like: { readonly quotedMinor: number; readonly chargedMinor: number } | null;
}

type CameBack = NonNullable<Booking['cameBack']>;

/**
 * Compares what came back with a quote, like for like: a price is held against what was charged for the lines that it covers, and only
 * where all of them were done. What is cheaper because less was done is no saving, so no difference is given there.
 */
export function compareBooking(quote: Quote, back: CameBack): ComparedQuote {
  const groups = quoteGroups(quote).map((group) => compareGroup(group, back));
  const alike = groups.flatMap(({ minor, chargedMinor, why }) => (why === null && minor !== null && chargedMinor !== null ? [{ minor, chargedMinor }] : []));
  const covered = new Set(quote.lines.flatMap((one) => one.covers));
  const did = back.lines.filter((one) => one.as !== 'not-done');
  const saidDone = [...covered].every((id) => did.some((one) => one.wanted === id));
  return {
    quotedMinor: quoteSum(quote).totalMinor,
    chargedMinor: chargedInAll(back),
    sameWork: saidDone && quote.lines.every((one) => one.covers.length > 0) && did.every((one) => isFree(one) || (one.wanted !== null && covered.has(one.wanted))),
    groups,
    like: alike.length === 0 ? null : { quotedMinor: sumOf(alike.map((one) => one.minor)), chargedMinor: sumOf(alike.map((one) => one.chargedMinor)) },
  };
}

/**
 * What was charged in all: as it was printed; else the charges of the lines that were done, where each has one.
 *
 * @example chargedInAll({ chargedMinor: null, lines: [{ as: 'done', chargedMinor: 100 }, { as: 'not-done', chargedMinor: null }] }) //=> 100
 */
export function chargedInAll({ chargedMinor, lines }: Pick<CameBack, 'chargedMinor' | 'lines'>): number | null {
  return chargedMinor ?? lineCharges(lines);
}

function lineCharges(lines: readonly CameBackLine[]): number | null {
  const did = lines.filter((one) => one.as !== 'not-done');
  const known = did.flatMap((one) => one.chargedMinor ?? []);
  return did.length === 0 || known.length < did.length ? null : sumOf(known);
}

/** Whether a sum was printed that the charges of the lines do not add up to: then what a line cost is not known. */
export function chargesDiffer({ chargedMinor, lines }: Pick<CameBack, 'chargedMinor' | 'lines'>): boolean {
  const added = lineCharges(lines);
  return chargedMinor !== null && added !== null && added !== chargedMinor;
}

function compareGroup(group: QuoteGroup, back: CameBack): ComparedGroup {
  const said = group.covers.map((id) => back.lines.find((one) => one.wanted === id));
  const chargedMinor = chargeOf(group, said, back);
  return { ...group, chargedMinor, why: hindrance(group, said, chargedMinor) };
}

function hindrance({ covers, minor }: QuoteGroup, said: readonly (CameBackLine | undefined)[], charged: number | null): ComparedGroup['why'] {
  if (covers.length === 0) return 'not-asked';
  if (said.some((one) => one?.as === 'not-done')) return 'not-done';
  if (said.includes(undefined)) return 'not-said';
  if (minor === null) return 'no-price';
  return charged === null ? 'no-charge' : null;
}

/** The charges of the lines a price covers; where it covers all that was done for money, the whole sum says it too. */
function chargeOf({ covers }: QuoteGroup, said: readonly (CameBackLine | undefined)[], back: CameBack): number | null {
  const others = back.lines.filter((one) => one.as !== 'not-done' && (one.wanted === null || !covers.includes(one.wanted)));
  if (back.chargedMinor !== null && others.every(isFree)) return back.chargedMinor;
  if (chargesDiffer(back)) return null;
  const charges = said.flatMap((one) => (one?.as === 'done' ? (one.chargedMinor ?? []) : []));
  const done = said.filter((one) => one?.as === 'done').length;
  return done > 0 && charges.length === done ? sumOf(charges) : null;
}

/** Something that cost nothing. */
function isFree(line: CameBackLine): boolean {
  return line.chargedMinor === 0;
}

function sumOf(amounts: readonly number[]): number {
  return amounts.reduce((sum, one) => sum + one, 0);
}
