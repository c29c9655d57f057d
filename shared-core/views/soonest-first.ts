import type { LocalDate } from '../calendar/local-date.ts';
import type { DueState } from '../care/due-window.ts';
import { compareNames } from '../result/compare-names.ts';

interface Dated {
  readonly state: DueState;
  readonly earliest: LocalDate | null;
  readonly likely: LocalDate | null;
  readonly lateBy: { readonly days: number } | null;
  readonly name: string;
}

const RANK: Readonly<Record<DueState, number>> = { late: 0, 'probably-due': 1, open: 2, ahead: 3, unknown: 4 };

/** Orders windows: late ones first (the latest of them foremost), then by state, likely date and name; nothing sorts last. */
export function bySoonest(a: Dated | undefined, b: Dated | undefined): number {
  if (a === undefined || b === undefined) return a === b ? 0 : a === undefined ? 1 : -1;
  return RANK[a.state] - RANK[b.state] || (b.lateBy?.days ?? 0) - (a.lateBy?.days ?? 0) || compareDates(a, b) || compareNames(a.name, b.name);
}

function compareDates(a: Dated, b: Dated): number {
  const [one, other] = [a.likely ?? a.earliest ?? '9999', b.likely ?? b.earliest ?? '9999'];
  return one < other ? -1 : one > other ? 1 : 0;
}
