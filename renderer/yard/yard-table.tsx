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
      <table className={styles.table}>
        <caption className="only-said">{caption}</caption>
        <thead>
          <tr>{heads.map((head, at) => <th key={at} scope="col">{head}</th>)}</tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </div>
  );
}
