import { useState, type ReactNode } from 'react';
import { tell } from '../../ui/words/tell.ts';
import styles from './editor.module.css';

interface FoldProps {
  readonly title: string;
  /** How many stand in it; it opens unfolded where there is any. */
  readonly count: number;
  readonly children: ReactNode;
}

/** Fields that many steps do not have: folded away while there are none, and opened by what is refused in them. */
export function Fold({ title, count, children }: FoldProps) {
  const [open] = useState(count > 0);
  return (
    <details className={styles.fold} open={open}>
      <summary>{count === 0 ? title : tell('sheet-edit.fold', { title, n: count })}</summary>
      <div className={styles.inner}>{children}</div>
    </details>
  );
}
