import { Button } from '@mantine/core';
import { useId, type ReactNode } from 'react';
import styles from './car.module.css';

interface SectionProps {
  readonly title: string;
  readonly add?: { readonly label: string; readonly onAdd: () => void };
  /** Further ways on, before the one to add. */
  readonly more?: ReactNode;
  readonly children: ReactNode;
}

/** One sheet of the Car screen: its heading, the way to add to it, and what stands in it. */
export function Section({ title, add, more, children }: SectionProps) {
  const id = useId();
  return (
    <section className={styles.section} aria-labelledby={id}>
      <div className={styles.sectionHead}>
        <h2 id={id}>{title}</h2>
        <div className={styles.sectionActions}>
          {more}
          {add !== undefined && <Button size="compact-md" variant="default" onClick={add.onAdd}>{add.label}</Button>}
        </div>
      </div>
      {children}
    </section>
  );
}
