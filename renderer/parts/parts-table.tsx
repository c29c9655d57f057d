import { Table } from '@mantine/core';
import { useRef, type ReactNode } from 'react';
import sectionStyles from '../ui/section.module.css';
import { tell } from '../ui/words/tell.ts';
import styles from './parts.module.css';
import { useOverflows } from './use-overflows.ts';

/** A column: its name, whether numbers stand in it; the column of buttons has a name to be heard only. */
export interface Column {
  readonly name: string;
  readonly number?: boolean;
}

interface PartsTableProps {
  readonly label: string;
  readonly columns: readonly Column[];
  readonly actions?: boolean;
  readonly children: ReactNode;
}

/** A table of the screen, which moves sideways within its own frame where it has no room. */
export function PartsTable({ label, columns, actions = true, children }: PartsTableProps) {
  const frame = useRef<HTMLDivElement>(null);
  const overflows = useOverflows(frame);
  // Without buttons in it the frame itself takes the focus, so that the arrow keys move it.
  const reached = overflows && !actions ? ({ tabIndex: 0, role: 'group', 'aria-label': label } as const) : {};
  return (
    <div ref={frame} className={sectionStyles.tableFrame} {...reached}>
      <Table className={styles.wide ?? ''} verticalSpacing="xs" aria-label={label}>
        <Table.Thead>
          <Table.Tr>
            {columns.map(({ name, number = false }) => <Table.Th key={name} scope="col" className={number ? `${sectionStyles.number} ${styles.numbers}` : ''}>{name}</Table.Th>)}
            {actions && <Table.Th scope="col"><span className="only-said">{tell('parts.actions')}</span></Table.Th>}
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>{children}</Table.Tbody>
      </Table>
    </div>
  );
}
