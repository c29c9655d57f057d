import { Button } from '@mantine/core';
import { useState, type ReactNode } from 'react';
import { tell } from '../../ui/words/tell.ts';
import styles from './import.module.css';

interface PagedProps<Item> {
  readonly items: readonly Item[];
  readonly size: number;
  /** What is paged, for who hears the buttons. */
  readonly label: string;
  readonly children: (shown: readonly Item[]) => ReactNode;
}

/** Shows a long list a page at a time. */
export function Paged<Item>({ items, size, label, children }: PagedProps<Item>) {
  const [wanted, setWanted] = useState(0);
  const last = Math.max(0, Math.ceil(items.length / size) - 1);
  const at = Math.min(wanted, last);
  const to = Math.min(items.length, (at + 1) * size);
  return (
    <>
      {children(items.slice(at * size, to))}
      {last > 0 && (
        <nav className={styles.pages} aria-label={tell('import.pages', { label })}>
          <Button size="compact-sm" variant="default" aria-disabled={at === 0} onClick={() => setWanted(Math.max(0, at - 1))}>{tell('import.page-before')}</Button>
          <span role="status">{tell('import.page', { from: at * size + 1, to, all: items.length })}</span>
          <Button size="compact-sm" variant="default" aria-disabled={at === last} onClick={() => setWanted(Math.min(last, at + 1))}>{tell('import.page-after')}</Button>
        </nav>
      )}
    </>
  );
}
