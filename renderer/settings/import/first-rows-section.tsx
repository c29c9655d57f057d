import { Button, Table } from '@mantine/core';
import { useState } from 'react';
import type { ImportView } from '../../../shared-core/views/import/import-view.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { understoodWords, type ImportedRow } from './row-words.ts';
import { WrittenCells } from './written-cells.tsx';
import sectionStyles from '../../ui/section.module.css';
import styles from './import.module.css';
import rowStyles from './rows.module.css';

const SHOWN = 6;

/** The first rows, what stands in the file beside what it is understood to mean. */
export function FirstRowsSection({ view }: { readonly view: ImportView }) {
  const [all, setAll] = useState(false);
  const { first } = view;
  return (
    <Section id="import-first" title={tell('import.first')}>
      <Table className={`${rowStyles.table} ${rowStyles.rowsTable}`}>
        <Table.Thead>
          <Table.Tr>
            <Table.Th scope="col">{tell('import.line')}</Table.Th>
            <Table.Th scope="col">{tell('import.written')}</Table.Th>
            <Table.Th scope="col">{tell('import.understood')}</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>{(all ? first : first.slice(0, SHOWN)).map((row) => <Row key={row.line} row={row} view={view} />)}</Table.Tbody>
      </Table>
      {first.length > SHOWN && <Button size="compact-sm" variant="subtle" aria-expanded={all} onClick={() => setAll(!all)}>{all ? tell('import.first-fewer') : tell('import.first-all', { n: first.length })}</Button>}
    </Section>
  );
}

function Row({ row, view }: { readonly row: ImportedRow; readonly view: ImportView }) {
  const words = useWords();
  const parts = understoodWords(row, view.cars, words);
  return (
    <Table.Tr>
      <Table.Th scope="row" className={rowStyles.lineCell ?? ''}><span className={rowStyles.lineWord}>{tell('import.line')} </span>{row.line}</Table.Th>
      <Table.Td><WrittenCells cells={row.cells} columns={view.columns} /></Table.Td>
      <Table.Td className={rowStyles.understood ?? ''}>
        {row.state !== 'refused' && (parts.length === 0 ? <span className={sectionStyles.small}>{tell('import.nothing-understood')}</span> : parts.map((part, at) => <span key={at} className={at === 0 ? rowStyles.main : rowStyles.part}>{part}</span>))}
        {row.state !== 'stored' && <span className={row.state === 'refused' ? styles.fault : styles.look}>{tell(`import-state.${row.state}`)}{row.text === '' ? '' : `: ${row.text}`}</span>}
        {row.cleaned.map(({ code, text }) => <span key={`${code} ${text}`} className={sectionStyles.small}>{text}</span>)}
      </Table.Td>
    </Table.Tr>
  );
}
