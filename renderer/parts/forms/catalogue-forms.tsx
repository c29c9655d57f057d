import { tell } from '../../ui/words/tell.ts';
import type { PartsSheet } from '../parts-sheet.ts';
import { NeedForm } from './need-form.tsx';
import { OfferForm } from './offer-form.tsx';
import { PartForm } from './part-form.tsx';
import { PreferenceForm } from './preference-form.tsx';
import { SeenForm } from './seen-form.tsx';
import type { SheetContent, SheetInput } from './sheet-content.ts';
import { SpecificationForm } from './specification-form.tsx';
import { SupplierForm } from './supplier-form.tsx';

/** The forms of what is needed, met and offered; null for another, and where what it was about is no longer there. */
export function catalogueContent(sheet: PartsSheet, { view, onClose }: SheetInput): SheetContent | null {
  switch (sheet.kind) {
    case 'need':
      return sheet.item === null ? null : { title: tell('need-form.title'), form: <NeedForm view={view} item={sheet.item} onClose={onClose} /> };
    case 'specification': {
      const now = view.specifications.find((one) => one.specification.id === sheet.specification)?.specification ?? null;
      return { title: tell(now === null ? 'specification.add-title' : 'specification.change-title', { name: now?.name ?? '' }), form: <SpecificationForm now={now} onClose={onClose} /> };
    }
    case 'part': {
      const now = view.parts.find((one) => one.part.id === sheet.part)?.part ?? null;
      return { title: tell(now === null ? 'part-form.add-title' : 'part-form.change-title', { part: now?.name ?? '' }), form: <PartForm view={view} now={now} meets={sheet.meets} onClose={onClose} /> };
    }
    case 'offer': {
      const now = view.offers.find((one) => one.offer.id === sheet.offer) ?? null;
      return { title: tell(now === null ? 'offer-form.add-title' : 'offer-form.change-title', { part: now?.partName ?? '' }), form: <OfferForm view={view} now={now?.offer ?? null} part={sheet.part} onClose={onClose} /> };
    }
    case 'seen': {
      const one = view.offers.find(({ offer }) => offer.id === sheet.offer);
      return one === undefined ? null : { title: tell('seen.title', { part: one.partName, supplier: one.supplierName }), form: <SeenForm view={view} one={one} onClose={onClose} /> };
    }
    case 'supplier': {
      const now = view.suppliers.find((one) => one.id === sheet.supplier) ?? null;
      return { title: tell(now === null ? 'supplier-form.add-title' : 'supplier-form.change-title', { supplier: now?.name ?? '' }), form: <SupplierForm view={view} now={now} onClose={onClose} /> };
    }
    case 'preference': {
      const one = view.specifications.find(({ specification }) => specification.id === sheet.specification);
      return one === undefined ? null : { title: tell('preference.title', { specification: one.specification.name }), form: <PreferenceForm one={one} currency={view.currency} onClose={onClose} /> };
    }
    default:
      return null;
  }
}
