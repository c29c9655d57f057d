import { useId, type ReactNode } from 'react';
import styles from './sheet.module.css';

interface PartProps {
  readonly title: string;
  readonly look?: 'cautions' | 'plain';
  readonly children: ReactNode;
}

/** One part of a car's sheet with its heading. */
export function Part({ title, look = 'plain', children }: PartProps) {
  const id = useId();
  return (
    <div className={styles.part} data-look={look} role="group" aria-labelledby={id}>
      <h3 id={id}>{title}</h3>
      {children}
    </div>
  );
}

/** A smaller group within a part. */
export function Group({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <div className={styles.group}>
      <h4>{title}</h4>
      {children}
    </div>
  );
}

/** An empty box to tick by hand. */
export function Box() {
  return <span className={styles.box} aria-hidden="true" />;
}

/** A line to write on by hand. */
export function Blank() {
  return <span className={styles.blank} aria-hidden="true" />;
}
