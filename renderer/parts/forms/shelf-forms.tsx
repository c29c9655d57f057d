import { tell } from '../../ui/words/tell.ts';
import type { PartsSheet } from '../parts-sheet.ts';
import { CountForm } from './count-form.tsx';
import { DiscardForm } from './discard-form.tsx';
import { DisposeForm } from './dispose-form.tsx';
import { LotForm } from './lot-form.tsx';
import { MoveLotForm } from './move-lot-form.tsx';
import { OpenedForm } from './opened-form.tsx';
import type { SheetContent, SheetInput } from './sheet-content.ts';
import { TaskToolsForm } from './task-tools-form.tsx';
import { ToolForm } from './tool-form.tsx';
import { UseForm } from './use-form.tsx';
import { WasteForm } from './waste-form.tsx';

/** The forms of the shelf and the tools; null for another, and where what it was about is no longer there. */
export function shelfContent(sheet: PartsSheet, { view, onClose }: SheetInput): SheetContent | null {
  switch (sheet.kind) {
    case 'lot':
      return { title: tell('lot.title'), form: <LotForm view={view} onClose={onClose} /> };
    case 'use':
    case 'opened':
    case 'move':
    case 'discard': {
      const one = view.shelf.find(({ lot }) => lot.id === sheet.lot);
      if (one === undefined) return null;
      const title = tell(`lot-sheet.${sheet.kind}`, { part: one.partName });
      const common = { view, one, onClose };
      if (sheet.kind === 'use') return { title, form: <UseForm {...common} /> };
      if (sheet.kind === 'opened') return { title, form: <OpenedForm {...common} /> };
      return sheet.kind === 'move' ? { title, form: <MoveLotForm one={one} onClose={onClose} /> } : { title, form: <DiscardForm {...common} /> };
    }
    case 'count':
      return { title: tell('count.title'), form: <CountForm view={view} onClose={onClose} /> };
    case 'waste': {
      const now = view.waste.find((one) => one.id === sheet.waste) ?? null;
      return { title: tell(now === null ? 'waste.add-title' : 'waste.change-title'), form: <WasteForm view={view} now={now} onClose={onClose} /> };
    }
    case 'dispose': {
      const waste = view.waste.find((one) => one.id === sheet.waste);
      return waste === undefined ? null : { title: tell('dispose.title', { what: waste.what }), form: <DisposeForm view={view} waste={waste} onClose={onClose} /> };
    }
    case 'tool': {
      const now = view.tools.find((one) => one.id === sheet.tool) ?? null;
      return { title: tell(now === null ? 'tool.add-title' : 'tool.change-title', { tool: now?.name ?? '' }), form: <ToolForm now={now} onClose={onClose} /> };
    }
    case 'task-tools':
      return { title: tell('task-tools.title'), form: <TaskToolsForm view={view} onClose={onClose} /> };
    default:
      return null;
  }
}
