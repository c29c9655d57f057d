import type { LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import type { AnyEntryKind, Entry, NewEntry } from '../journal/entry-kind.ts';
import type { EntryValues } from '../journal/entry-values.ts';
import type { Facts } from '../journal/facts.ts';
import type { HistoryPart } from './history-part.ts';
import type { RowsPart, SealPart } from './journal-part.ts';

/** A sound pack that is to be taken in. */
export interface PackToTakeIn {
  readonly history: HistoryPart;
  readonly rows: RowsPart;
  readonly seal: SealPart;
  /** The SHA-256 of its ZIP, and its length. */
  readonly digest: string;
  readonly bytes: number;
  readonly sealed: boolean;
  /** The digests of the papers in it. */
  readonly papers: ReadonlySet<string>;
  readonly today: LocalDate;
  /** The fingerprint of this household's own key. */
  readonly ownFingerprint: string;
}

/** What a car came with: entries to write, and what they bring. */
export interface TakenIn {
  readonly entries: readonly NewEntry[];
  readonly car: Car;
  readonly records: number;
  readonly readings: number;
  /** Entries of kinds that a next keeper has no use for, or whose necessary fields are withheld: they stay in the pack. */
  readonly left: number;
  /** The currency of its amounts, where it is not the household's: null where the pack names none. Undefined where it is. */
  readonly otherCurrency?: string | null;
  /** Prices asked that were not taken, for they are in that other currency. */
  readonly pricesLeft: number;
}

/** One entry to be written: whose it was there, and what it says here. */
export interface TakenEntry {
  readonly kind: AnyEntryKind;
  readonly old: string;
  /** The row it was read from, or the last one of what stands. */
  readonly seq: number;
  readonly at: string;
  readonly values: EntryValues;
}

/** A pack as it was read: what stands at its end, and the entries behind it. */
export interface ReadPack {
  readonly pack: PackToTakeIn;
  readonly there: Facts;
  readonly car: Car;
  readonly readable: readonly Entry[];
}
