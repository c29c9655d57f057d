import type { SupplierOrder } from '../../shared-core/views/order-view-schema.ts';
import type { OrderSheet } from '../../shared-core/views/order-sheets.ts';

/** The entry that is laid over the Parts screen; null for something new. */
export type PartsSheet =
  | { readonly kind: 'need'; readonly item: string | null }
  | { readonly kind: 'specification'; readonly specification: string | null }
  /** A part, and for a new one what it is to meet. */
  | { readonly kind: 'part'; readonly part: string | null; readonly meets: string | null }
  | { readonly kind: 'offer'; readonly offer: string | null; readonly part: string | null }
  | { readonly kind: 'seen'; readonly offer: string }
  | { readonly kind: 'supplier'; readonly supplier: string | null }
  | { readonly kind: 'preference'; readonly specification: string }
  | { readonly kind: 'place'; readonly proposed: SupplierOrder }
  | { readonly kind: 'by-hand' }
  | { readonly kind: 'sheet'; readonly sheet: OrderSheet }
  | { readonly kind: 'receive' | 'change-order' | 'send-back'; readonly order: string }
  | { readonly kind: 'refund'; readonly order: string; readonly back: string }
  | { readonly kind: 'lot' }
  | { readonly kind: 'use' | 'opened' | 'move' | 'discard'; readonly lot: string }
  | { readonly kind: 'count' }
  | { readonly kind: 'waste'; readonly waste: string | null }
  | { readonly kind: 'dispose'; readonly waste: string }
  | { readonly kind: 'tool'; readonly tool: string | null }
  | { readonly kind: 'task-tools' };

/** Lays an entry over the screen. */
export type OpenPartsSheet = (sheet: PartsSheet) => void;
