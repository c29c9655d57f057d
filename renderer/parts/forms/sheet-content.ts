import type { ReactNode } from 'react';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';

/** What lies over the screen: its title and its form. */
export interface SheetContent {
  readonly title: string;
  readonly form: ReactNode;
}

/** What every form over the screen is made from. */
export interface SheetInput {
  readonly view: PartsView;
  readonly onClose: () => void;
}
