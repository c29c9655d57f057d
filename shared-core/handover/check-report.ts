import type { Seal } from '../journal/seal.ts';
import type { Message } from '../result/result.ts';
import type { Fault, FoundFile } from './check-fault.ts';

/** What is to be checked: the files found, what the container they came in is guilty of, and a seal given before. */
export interface PackToCheck {
  readonly found: readonly FoundFile[];
  readonly container: readonly Fault[];
  /** Paths whose own faults follow from the container's: not named a second time. */
  readonly excused: ReadonlySet<string>;
  /** The folder that a ZIP holds the pack in; null for a folder, which anyone may rename. */
  readonly base: string | null;
  readonly givenSeal: Seal | null;
}

/** What a field that is not shown is: the row it belongs to, and its name. */
export interface WithheldField {
  readonly row: number;
  readonly field: string;
  /** Of an earlier keeper's pack within this one: the way to it. */
  readonly path?: string;
}

/** The answer about a pack. It is whole where `faults` is empty; `notes` say what was and what was not proven. */
export interface CheckReport {
  readonly name: string | null;
  readonly composedOn: string | null;
  readonly faults: readonly Fault[];
  readonly warnings: readonly Message[];
  readonly notes: readonly Message[];
  readonly rows: number;
  readonly withheld: readonly WithheldField[];
  readonly seal: Seal | null;
}

/** The report of something that cannot be looked into any further. */
export function unreadableReport(faults: readonly Fault[]): CheckReport {
  return { name: null, composedOn: null, faults, warnings: [], notes: [], rows: 0, withheld: [], seal: null };
}
