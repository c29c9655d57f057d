/** The entry that is laid over the booking; a null quote is a new one. */
export type BookingSheet = { readonly kind: 'ask' | 'ask-rest' | 'book' | 'back' | 'drop' } | { readonly kind: 'quote'; readonly quote: string | null };

/** Lays an entry over the screen. */
export type OpenBookingSheet = (sheet: BookingSheet) => void;
