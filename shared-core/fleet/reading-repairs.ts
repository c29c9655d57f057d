import { gateReading, zOfReading } from './reading-judgement.ts';
import type { Usage } from './usage-rate.ts';

/** The slip of the hand that a repair undoes. */
export type ReadingSlip = 'swap' | 'unit' | 'insert' | 'delete' | 'substitute';

/** What may have been meant: a value as the instrument shows it, in the unit typed. Offered, never applied. */
export interface ReadingRepair {
  readonly value: number;
  readonly slip: ReadingSlip;
  /** |z| and the slip's own cost: the lower, the likelier. */
  readonly rank: number;
}

/** A doubtful reading as typed; `usage` is that of the readings before it. */
export interface ReadingToRepair {
  readonly usage: Usage;
  readonly day: number;
  /** As typed, in its unit; decimals are left aside. */
  readonly value: number;
  /** Kilometres in one unit of the value: 1, or 1.609344 for miles. */
  readonly kmPerUnit: number;
  /** What replaced instruments add, km. */
  readonly offsetKm: number;
  /** The next accepted reading, km; null where there is none. */
  readonly atMostKm: number | null;
}

/** Source: house measurement with injected slips (FORECAST section 6). */
const COST: Readonly<Record<ReadingSlip, number>> = { swap: 0, unit: 0, insert: 0.5, delete: 0.5, substitute: 0.7 };
const MOST_Z = 1.7;
const MOST_OFFERED = 3;
/** Source: NIST SP 811 (2008) B.8: 1 mi = 1.609 344 km. */
const KM_IN_MILE = 1.609344;
const DIGITS = '0123456789';

/**
 * At most three values that one slip away would have been likely, likeliest first; none where nothing fits: then just ask
 * the keeper to look again. Equal ranks: the lower value first.
 *
 * Source: house method, FORECAST section 6.
 * @example suggestRepairs({ usage, day, value: 65300, kmPerUnit: 1, offsetKm: 0, atMostKm: null })[0] //=> { value: 63500, slip: 'swap', rank: 0.21 }
 */
export function suggestRepairs(reading: ReadingToRepair): readonly ReadingRepair[] {
  const best = new Map<number, ReadingRepair>();
  for (const { value, slip } of oneSlipAway(Math.trunc(reading.value))) {
    const rank = rankOf(reading, value, slip);
    if (rank !== null && !best.has(value)) best.set(value, { value, slip, rank });
  }
  return [...best.values()].sort((a, b) => a.rank - b.rank || a.value - b.value).slice(0, MOST_OFFERED);
}

/** |z| and the slip's cost; null where the value would itself be unlikely or impossible. */
function rankOf(reading: ReadingToRepair, value: number, slip: ReadingSlip): number | null {
  const meant = { day: reading.day, km: value * reading.kmPerUnit + reading.offsetKm };
  if (reading.atMostKm !== null && meant.km > reading.atMostKm) return null;
  if (gateReading(reading.usage, meant) !== null) return null;
  const z = Math.abs(zOfReading(reading.usage, meant));
  return z < MOST_Z ? z + COST[slip] : null;
}

interface Edit {
  readonly value: number;
  readonly slip: ReadingSlip;
}

/** In order of cost, so that of two ways to one value the cheaper comes first. */
function oneSlipAway(value: number): readonly Edit[] {
  const typed = String(value);
  const units = [value * KM_IN_MILE, value / KM_IN_MILE].map((other) => ({ value: Math.round(other), slip: 'unit' as const }));
  return [
    ...fromTexts('swap', swaps(typed)),
    ...units,
    ...fromTexts('insert', insertions(typed)),
    ...fromTexts('delete', deletions(typed)),
    ...fromTexts('substitute', substitutions(typed)),
  ].filter((edit) => edit.value !== value);
}

/** Numbers without a leading zero only: no instrument is typed with one. */
function fromTexts(slip: ReadingSlip, texts: readonly string[]): readonly Edit[] {
  return texts.filter((text) => /^[1-9]\d*$/.test(text)).map((text) => ({ value: Number(text), slip }));
}

function swaps(typed: string): readonly string[] {
  return places(typed.length - 1).map((at) => typed.slice(0, at) + (typed[at + 1] ?? '') + (typed[at] ?? '') + typed.slice(at + 2));
}

function insertions(typed: string): readonly string[] {
  return places(typed.length + 1).flatMap((at) => [...DIGITS].map((digit) => typed.slice(0, at) + digit + typed.slice(at)));
}

function deletions(typed: string): readonly string[] {
  return places(typed.length).map((at) => typed.slice(0, at) + typed.slice(at + 1));
}

function substitutions(typed: string): readonly string[] {
  return places(typed.length).flatMap((at) => [...DIGITS].map((digit) => typed.slice(0, at) + digit + typed.slice(at + 1)));
}

function places(count: number): readonly number[] {
  return Array.from({ length: Math.max(0, count) }, (_, at) => at);
}
