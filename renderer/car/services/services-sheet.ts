import type { LineDraft } from '../forms/record-draft.ts';

/** The entry that is laid over the Services leaf: a service to name or change, or work to record on some of its lines. */
export type ServicesSheet =
  | { readonly kind: 'service'; readonly service: string | null }
  | { readonly kind: 'record'; readonly lines: readonly LineDraft[] };

/** Lays an entry over the leaf. */
export type OpenServicesSheet = (sheet: ServicesSheet) => void;
