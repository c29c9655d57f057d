import type { ReactNode } from 'react';
import styles from './import.module.css';

interface SheetSectionProps {
  readonly id: string;
  readonly title: string;
  readonly hint?: string;
  readonly children: ReactNode;
}

/** One sheet of the page; its heading can be gone to. */
export function SheetSection({ id, title, hint, children }: SheetSectionProps) {
  return (
    <section className={styles.section} aria-labelledby={id}>
      <h2 id={id} tabIndex={-1}>{title}</h2>
      {hint !== undefined && <p className={styles.soft}>{hint}</p>}
      {children}
    </section>
  );
}
