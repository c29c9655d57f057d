import { Table } from '@mantine/core';
import type { ReactNode } from 'react';
import styles from './yard-table.module.css';

interface YardTableProps {
  readonly caption: string;
  readonly heads: readonly ReactNode[];
  /** Stands below another table. */
  readonly second?: boolean;
  /** Its rows. */
  readonly children: ReactNode;
}

/** A table in the place of the lanes. */
export function YardTable({ caption, heads, second = false, children }: YardTableProps) {
  return (
    <div className={second ? `${styles.frame} ${styles.second}` : styles.frame}>
      <Table className={styles.table ?? ''} verticalSpacing="xs">
        <caption className="only-said">{caption}</caption>
        <Table.Thead>
          <Table.Tr>{heads.map((head, at) => <Table.Th key={at} scope="col">{head}</Table.Th>)}</Table.Tr>
        </Table.Thead>
        <Table.Tbody>{children}</Table.Tbody>
      </Table>
    </div>
  );
}
