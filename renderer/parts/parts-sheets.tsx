import type { PartsView } from '../../shared-core/views/parts-view-schema.ts';
import { SideSheet } from '../ui/side-sheet.tsx';
import { catalogueContent } from './forms/catalogue-forms.tsx';
import type { PartsSheet } from './parts-sheet.ts';
import { orderContent } from './forms/order-forms.tsx';
import { shelfContent } from './forms/shelf-forms.tsx';

interface PartsSheetsProps {
  readonly view: PartsView;
  readonly sheet: PartsSheet | null;
  readonly onClose: () => void;
}

/** The entry that lies over the screen, if any. */
export function PartsSheets({ view, sheet, onClose }: PartsSheetsProps) {
  const input = { view, onClose };
  const shown = sheet === null ? null : (catalogueContent(sheet, input) ?? orderContent(sheet, input) ?? shelfContent(sheet, input));
  return <SideSheet title={shown?.title ?? ''} opened={shown !== null} onClose={onClose}>{shown?.form}</SideSheet>;
}
