import { Table } from '@mantine/core';
import { Link } from 'wouter';
import { MarkGlyph } from '../ui/marks/mark-glyph.tsx';
import { tell } from '../ui/words/tell.ts';
import type { LaneWithMarks } from './lane-with-marks.ts';
import type { YardMark } from './yard-mark.ts';
import styles from './mark-table.module.css';

/** Every mark of the yard as a row of a table, soonest first in each car. */
export function MarkTable({ lanes }: { readonly lanes: readonly LaneWithMarks[] }) {
  return (
    <div className={styles.frame}>
      <Table className={styles.table ?? ''} verticalSpacing="xs">
        <caption className="only-said">{tell('table.caption')}</caption>
        <Table.Thead>
          <Table.Tr>
            <Table.Th scope="col">{tell('table.car')}</Table.Th>
            <Table.Th scope="col">{tell('table.what')}</Table.Th>
            <Table.Th scope="col">{tell('table.state')}</Table.Th>
            <Table.Th scope="col">{tell('table.when')}</Table.Th>
            <Table.Th scope="col">{tell('table.why')}</Table.Th>
            <Table.Th scope="col">{tell('table.work')}</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>{lanes.flatMap(({ marks }) => marks.map((mark) => <MarkRow key={mark.id} mark={mark} />))}</Table.Tbody>
      </Table>
    </div>
  );
}

function MarkRow({ mark }: { readonly mark: YardMark }) {
  return (
    <Table.Tr>
      <Table.Td>{mark.carName}</Table.Td>
      <Table.Th scope="row" className={styles.what ?? ''}><Link href={mark.href}>{mark.name}</Link></Table.Th>
      <Table.Td><span className={styles.state}><MarkGlyph {...mark} /> {mark.standing}</span></Table.Td>
      <Table.Td>{mark.when}</Table.Td>
      <Table.Td>{mark.why}</Table.Td>
      <Table.Td>{mark.work.join(', ')}</Table.Td>
    </Table.Tr>
  );
}
