import { useState } from 'react';
import type { Refusal, Result } from '../../../shared-core/result/result.ts';
import { useFileDrop, type FileDrop } from '../../ui/use-file-drop.ts';
import { readTableFiles } from './read-table.ts';
import type { ChosenTable } from './table-draft.ts';

/** Where files may be dropped, and what was refused of one dropped or chosen. */
export interface Drop extends FileDrop {
  readonly refusal: Refusal | null;
  readonly read: (files: readonly File[]) => void;
  readonly take: (table: Result<ChosenTable>) => void;
}

/** Reads files that are dropped on the page, or chosen, and takes what could be read. */
export function useDrop(onTable: (table: ChosenTable) => void): Drop {
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const take = (table: Result<ChosenTable>) => {
    setRefusal(table.ok ? null : table.refusal);
    if (table.ok) onTable(table.value);
  };
  const read = (files: readonly File[]) => void readTableFiles(files).then(take);
  const { over, place } = useFileDrop(read);
  return { over, place, refusal, read, take };
}
