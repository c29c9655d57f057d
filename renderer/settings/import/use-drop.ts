import { useState, type DragEvent } from 'react';
import type { Refusal, Result } from '../../../shared-core/result/result.ts';
import { readTableFiles } from './read-table.ts';
import type { ChosenTable } from './table-draft.ts';

/** Where files may be dropped, and what was refused of one dropped or chosen. */
export interface Drop {
  /** A file is held over the page. */
  readonly over: boolean;
  readonly refusal: Refusal | null;
  readonly place: { readonly onDragOver: (event: DragEvent) => void; readonly onDragLeave: (event: DragEvent) => void; readonly onDrop: (event: DragEvent) => void };
  readonly read: (files: readonly File[]) => void;
  readonly take: (table: Result<ChosenTable>) => void;
}

/** Reads files that are dropped on the page, or chosen, and takes what could be read. */
export function useDrop(onTable: (table: ChosenTable) => void): Drop {
  const [over, setOver] = useState(false);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const take = (table: Result<ChosenTable>) => {
    setRefusal(table.ok ? null : table.refusal);
    if (table.ok) onTable(table.value);
  };
  const read = (files: readonly File[]) => void readTableFiles(files).then(take);
  return {
    over, refusal, read, take,
    place: {
      onDragOver: (event) => {
        event.preventDefault();
        setOver(true);
      },
      // Over a part of the page one is still over the page.
      onDragLeave: (event) => setOver(event.currentTarget.contains(event.relatedTarget as Node | null)),
      onDrop: (event) => {
        event.preventDefault();
        setOver(false);
        read([...event.dataTransfer.files]);
      },
    },
  };
}
