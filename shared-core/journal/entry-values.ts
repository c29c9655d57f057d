import type { Json } from './canonical-json.ts';

/** The named values of one entry. */
export type EntryValues = Readonly<Record<string, Json>>;
