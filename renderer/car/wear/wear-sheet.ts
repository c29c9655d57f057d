import type { MeasureKind, Subject } from './subject-words.ts';

/** The entry that is laid over the leaf. */
export type WearSheet =
  | { readonly kind: 'measure'; readonly what: MeasureKind; readonly name: string | null }
  | { readonly kind: 'correct'; readonly measurement: string }
  | { readonly kind: 'limit'; readonly series: string }
  | { readonly kind: 'wheel'; readonly wheel: string | null }
  | { readonly kind: 'move' };

/** Lays an entry over the leaf. */
export type OpenWear = (sheet: WearSheet) => void;

/** The entry that measures a subject again. */
export function measureAgain({ what, name }: Pick<Subject, 'what' | 'name'>): WearSheet {
  return { kind: 'measure', what, name };
}
