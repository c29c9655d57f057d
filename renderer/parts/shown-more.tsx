import { Button } from '@mantine/core';
import { useState, type ReactNode } from 'react';
import { useSought } from '../ui/sought.ts';
import { tell } from '../ui/words/tell.ts';

interface ShownMoreProps<Item> {
  readonly items: readonly Item[];
  readonly first: number;
  /** The place that an address names an item by: what is sought is never left out. */
  readonly placeOf?: (item: Item) => string;
  readonly children: (shown: readonly Item[]) => ReactNode;
}

/** Shows the first of a long list, and all of it when asked. */
export function ShownMore<Item>({ items, first, placeOf, children }: ShownMoreProps<Item>) {
  const [all, setAll] = useState(false);
  const sought = useSought();
  const isSought = placeOf !== undefined && items.slice(first).some((item) => placeOf(item) === sought);
  const shown = all || isSought ? items : items.slice(0, first);
  return (
    <>
      {children(shown)}
      {items.length > shown.length && <Button size="compact-md" variant="default" onClick={() => setAll(true)}>{tell('parts.show-all', { n: items.length })}</Button>}
    </>
  );
}
