import type { Json } from '../journal/canonical-json.ts';
import type { Mark } from '../records/paper-redaction.ts';
import { sayOf } from '../result/words/say.ts';

/** How many parts of a page are blacked out. */
export interface BlackedOutPage {
  readonly page: number;
  readonly parts: number;
}

/** A paper as the receiver gets it, or is told of it. */
export interface HandedPaper {
  readonly name: string;
  /** Null where it is not in the pack. */
  readonly path: string | null;
  /** Of the file in the pack, else of the paper; null where a digest could let one find by trying what is blacked out. */
  readonly sha256: string | null;
  /** Empty where the paper is as it was kept. */
  readonly blackedOut: readonly BlackedOutPage[];
}

/** How many parts are blacked out, page by page. @example blackedOutPages(marks) //=> [{ page: 1, parts: 2 }] */
export function blackedOutPages(marks: readonly Mark[]): BlackedOutPage[] {
  const pages = [...new Set(marks.map((mark) => mark.page))].sort((a, b) => a - b);
  return pages.map((page) => ({ page, parts: marks.filter((mark) => mark.page === page).length }));
}

/** The parts in words. @example sayBlackedOut([{ page: 1, parts: 2 }]) //=> '2 on page 1' */
export function sayBlackedOut(pages: readonly BlackedOutPage[]): string {
  return pages.map(({ page, parts }) => sayOf('history-parts-on-page', { parts, page })).join(', ');
}

/** Whether a value of an entry says one of these digests anywhere in it: such a field is handed over by its own salted digest only. */
export function namesAny(value: Json, digests: ReadonlySet<string>): boolean {
  if (typeof value === 'string') return digests.has(value);
  return typeof value === 'object' && value !== null && Object.values(value).some((part) => part !== undefined && namesAny(part, digests));
}
