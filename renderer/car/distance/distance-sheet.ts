/** The entry of this leaf that is laid over the screen; null where a new one is entered. */
export type DistanceSheet =
  | { readonly kind: 'expected' }
  | { readonly kind: 'lay-up'; readonly layUp: string | null; readonly ending: boolean }
  | { readonly kind: 'use-change'; readonly useChange: string | null }
  | { readonly kind: 'instrument'; readonly instrument: string }
  | { readonly kind: 'allowance'; readonly allowance: string | null };

/** Lays an entry over the screen. */
export type OpenDistanceSheet = (sheet: DistanceSheet) => void;
