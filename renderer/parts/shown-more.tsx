import { Button } from '@mantine/core';
import { useState, type ReactNode } from 'react';
import { tell } from '../ui/words/tell.ts';

interface ShownMoreProps<Item> {
  readonly items: readonly Item[];
  readonly first: number;
  readonly children: (shown: readonly Item[]) => ReactNode;
}

/** Shows the first of a long list, and all of it when asked. */
export function ShownMore<Item>({ items, first, children }: ShownMoreProps<Item>) {
  const [all, setAll] = useState(false);
  const shown = all ? items : items.slice(0, first);
  return (
    <>
      {children(shown)}
      {items.length > shown.length && <Button size="compact-md" variant="default" onClick={() => setAll(true)}>{tell('parts.show-all', { n: items.length })}</Button>}
    </>
  );
}
