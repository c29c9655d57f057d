import { createContext, useContext } from 'react';
import type { CardView } from '../../../shared-core/views/card-view.ts';
import { must } from '../../../shared-core/result/assert.ts';
import type { Editing } from './sheet-draft.ts';
import type { SheetEntry } from './use-sheet-draft.ts';

/** What every part of the editor has at hand: the sheet as it stands with what can be named, the car's card, and what is typed. */
export interface EditorHere {
  readonly editing: Editing;
  readonly card: CardView;
  readonly entry: SheetEntry;
  /** Gives the focus to an element once it is on the screen. */
  readonly focusNext: (id: string) => void;
}

export const EditorContext = createContext<EditorHere | null>(null);

/** The editor around this part. */
export function useEditor(): EditorHere {
  return must(useContext(EditorContext), 'an editor around this part');
}
