/** The entry that is laid over the Car screen. */
export type CarSheet =
  | { readonly kind: 'car' }
  | { readonly kind: 'reading' }
  | { readonly kind: 'record'; readonly item: string | null }
  | { readonly kind: 'item'; readonly item: string | null }
  /** An obligation to change, or null: a new one. */
  | { readonly kind: 'obligation'; readonly obligation: string | null }
  | { readonly kind: 'recall'; readonly recall: string | null }
  | { readonly kind: 'renew'; readonly obligation: string }
  | { readonly kind: 'pack' }
  | { readonly kind: 'observation' }
  | { readonly kind: 'follow-up' }
  | { readonly kind: 'close'; readonly observation: string };

/** Lays an entry over the screen. */
export type OpenSheet = (sheet: CarSheet) => void;
