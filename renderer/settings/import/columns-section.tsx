import { NativeSelect, Table } from '@mantine/core';
import type { ImportView } from '../../../shared-core/views/import/import-view.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { Paged } from './paged.tsx';
import type { PartProps } from './questions-section.tsx';
import { holdColumn, type Holding } from './table-draft.ts';
import sectionStyles from '../../ui/section.module.css';
import rowStyles from './rows.module.css';

const HOLDINGS = ['date', 'reading', 'unit', 'car', 'work', 'outcome', 'cost', 'place', 'by', 'note'] as const satisfies readonly Holding[];
const PAGE = 15;
const EXAMPLES = 2;
/** The host cuts a longer head. */
const LONGEST_HEAD = 80;

/** What stands in which column, each to be chosen otherwise. */
export function ColumnsSection({ draft, view, onChoices }: PartProps) {
  return (
    <Section id="import-columns" title={tell('import.columns')} hint={tell('import.columns-what')}>
      <Paged items={view.columns} size={PAGE} label={tell('import.columns')}>
        {(shown) => (
          <Table className={`${rowStyles.table} ${rowStyles.columnsTable}`}>
            <Table.Thead>
              <Table.Tr>
                <Table.Th scope="col">{tell('import.column')}</Table.Th>
                <Table.Th scope="col">{tell('import.cells')}</Table.Th>
                <Table.Th scope="col">{tell('import.holds')}</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {shown.map((column) => <ColumnRow key={column.number} column={column} onHold={(holds) => onChoices(holdColumn(draft.choices, column.holds, column.number, holds))} />)}
            </Table.Tbody>
          </Table>
        )}
      </Paged>
    </Section>
  );
}

function ColumnRow({ column, onHold }: { readonly column: ImportView['columns'][number]; readonly onHold: (holds: Holding | null) => void }) {
  const { number, head, holds, by, examples } = column;
  const named = head !== null && head !== '';
  return (
    <Table.Tr className={holds === null ? rowStyles.leftOut ?? '' : ''}>
      <Table.Th scope="row" className={rowStyles.headCell ?? ''}>
        <span className={sectionStyles.small}>{tell('import.column-n', { number })}</span>
        {named && <span>{head.length < LONGEST_HEAD ? head : `${head} …`}</span>}
      </Table.Th>
      <Table.Td>{examples.length === 0 ? <span className={sectionStyles.small}>{tell('import.no-cells')}</span> : examples.slice(0, EXAMPLES).map((cell, at) => <span key={at} className={rowStyles.cell}>{cell}</span>)}</Table.Td>
      <Table.Td className={rowStyles.holdsCell ?? ''}>
        <NativeSelect
          aria-label={tell('import.column-holds', { number, head: head ?? '' })}
          value={holds ?? ''}
          data={[{ value: '', label: tell('import-holds.none') }, ...HOLDINGS.map((value) => ({ value, label: tell(`import-holds.${value}`) }))]}
          onChange={(event) => onHold(HOLDINGS.find((value) => value === event.currentTarget.value) ?? null)}
        />
        {holds !== null && by !== 'none' && <span className={sectionStyles.small}>{tell(`import-by.${by}`)}</span>}
      </Table.Td>
    </Table.Tr>
  );
}
