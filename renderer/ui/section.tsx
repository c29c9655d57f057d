import { Button } from '@mantine/core';
import { useId, type ReactNode } from 'react';
import styles from './section.module.css';
import { placeOf } from './sought.ts';

interface SectionProps {
  readonly title: string;
  /** Names the heading, so that it can be gone to. */
  readonly id?: string;
  /** Makes the whole sheet a place that an address can name: its kind and id. */
  readonly place?: readonly [kind: string, id: string];
  /** What there is to know before one reads on. */
  readonly hint?: string;
  readonly add?: { readonly label: string; readonly onAdd: () => void };
  /** Further ways on, before the one to add. */
  readonly more?: ReactNode;
  readonly children: ReactNode;
}

/** One sheet of a screen: its heading, the way to add to it, and what stands in it. */
export function Section({ title, id, place, hint, add, more, children }: SectionProps) {
  const own = useId();
  const named = id ?? own;
  return (
    <section {...(place === undefined ? {} : placeOf(...place))} className={styles.section} aria-labelledby={named}>
      <div className={styles.head}>
        <h2 id={named} {...(id === undefined ? {} : { tabIndex: -1 })}>{title}</h2>
        {(more !== undefined || add !== undefined) && (
          <div className={styles.actions}>
            {more}
            {add !== undefined && <Button size="compact-md" variant="default" onClick={add.onAdd}>{add.label}</Button>}
          </div>
        )}
      </div>
      {hint !== undefined && <p className={styles.soft}>{hint}</p>}
      {children}
    </section>
  );
}
