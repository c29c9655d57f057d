import { tell } from '../../ui/words/tell.ts';
import { SheetPanel } from '../order/sheet-panel.tsx';
import type { PartsSheet } from '../parts-sheet.ts';
import { ByHandForm } from './by-hand-form.tsx';
import { ChangeOrderForm } from './change-order-form.tsx';
import { PlaceForm } from './place-form.tsx';
import { ReceiveForm } from './receive-form.tsx';
import { RefundForm } from './refund-form.tsx';
import { SendBackForm } from './send-back-form.tsx';
import type { SheetContent, SheetInput } from './sheet-content.ts';

/** The forms of orders; null for another, and where what it was about is no longer there. */
export function orderContent(sheet: PartsSheet, { view, onClose }: SheetInput): SheetContent | null {
  switch (sheet.kind) {
    case 'place':
      return { title: tell('place.title', { supplier: sheet.proposed.supplierName }), form: <PlaceForm view={view} proposed={sheet.proposed} onClose={onClose} /> };
    case 'by-hand':
      return { title: tell('by-hand.title'), form: <ByHandForm view={view} onClose={onClose} /> };
    case 'sheet':
      return { title: tell('sheet-panel.title', { supplier: sheet.sheet.supplierName }), form: <SheetPanel sheet={sheet.sheet} /> };
    case 'receive':
    case 'change-order':
    case 'send-back': {
      const order = view.orders.find((one) => one.order.id === sheet.order);
      if (order === undefined) return null;
      const common = { view, order, onClose };
      const values = { supplier: order.supplierName };
      if (sheet.kind === 'receive') return { title: tell('receive.title', values), form: <ReceiveForm {...common} /> };
      return sheet.kind === 'send-back' ? { title: tell('return.title', values), form: <SendBackForm {...common} /> } : { title: tell('change-order.title', values), form: <ChangeOrderForm {...common} /> };
    }
    case 'refund': {
      const order = view.orders.find((one) => one.order.id === sheet.order);
      const back = order?.returns.find((one) => one.id === sheet.back);
      return order === undefined || back === undefined ? null : { title: tell('refund.title', { supplier: order.supplierName }), form: <RefundForm view={view} back={back} onClose={onClose} /> };
    }
    default:
      return null;
  }
}
