import type { ImportView } from '../../../shared-core/views/import/import-view.ts';
import { tell } from '../../ui/words/tell.ts';
import rowStyles from './rows.module.css';

/** The cells of a row as they stand in the file; those of columns left out are paler. Empty ones at its end are not shown. */
export function WrittenCells({ cells, columns }: { readonly cells: readonly string[]; readonly columns: ImportView['columns'] }) {
  const last = cells.findLastIndex((cell) => cell.trim() !== '');
  return (
    <ul className={rowStyles.written}>
      {cells.slice(0, last + 1).map((cell, at) => (
        <li key={at} className={columns[at]?.holds === null ? rowStyles.pale : ''}>{cell.trim() === '' ? <span className={rowStyles.blank}>{tell('import.empty-cell')}</span> : cell}</li>
      ))}
    </ul>
  );
}
