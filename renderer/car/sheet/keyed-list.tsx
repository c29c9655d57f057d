import { Button } from '@mantine/core';
import type { ReactNode } from 'react';
import { tell } from '../../ui/words/tell.ts';
import { useEditor } from './editor-context.ts';
import type { Keyed } from './sheet-draft.ts';
import styles from './editor.module.css';

interface KeyedListProps<One extends Keyed> {
  /** Its path in the request, which its ids are made of. */
  readonly path: string;
  readonly list: readonly One[];
  readonly onChange: (list: readonly One[]) => void;
  readonly fresh: () => One;
  readonly most: number;
  readonly addLabel: string;
  /** What one of them is called for who cannot see it. */
  readonly nameOf: (one: One, at: number) => string;
  readonly children: (one: One, set: (change: Partial<One>) => void, path: string) => ReactNode;
}

/** A list whose members are added and taken out one by one; the focus goes to the first field of what was added, and to what comes after what was taken out. */
export function KeyedList<One extends Keyed>({ path, list, onChange, fresh, most, addLabel, nameOf, children }: KeyedListProps<One>) {
  const { entry, focusNext } = useEditor();
  const add = `${entry.at(path).id}-add`;
  const first = (key: number) => `${entry.at(path).id}-of-${key}`;
  const onRemove = (at: number) => {
    const next = list[at + 1] ?? list[at - 1];
    focusNext(next === undefined ? add : `${first(next.key)}-out`);
    onChange(list.toSpliced(at, 1));
    entry.rearrange({});
  };
  return (
    <div className={styles.keyed}>
      {list.map((one, at) => (
        <div key={one.key} id={first(one.key)} className={styles.member} role="group" aria-label={nameOf(one, at)}>
          <div className={styles.fields}>{children(one, (some) => onChange(list.map((other) => (other.key === one.key ? { ...other, ...some } : other))), `${path}.${at}`)}</div>
          <Button id={`${first(one.key)}-out`} size="compact-sm" variant="subtle" className={styles.out ?? ''} aria-label={tell('sheet-edit.out-of', { name: nameOf(one, at) })} onClick={() => onRemove(at)}>{tell('sheet-edit.out')}</Button>
        </div>
      ))}
      {list.length < most && (
        <Button
          id={add}
          size="compact-sm"
          variant="default"
          onClick={() => {
            const one = fresh();
            onChange([...list, one]);
            // The group stands only after this: its first field is found then.
            requestAnimationFrame(() => document.querySelector<HTMLElement>(`[id="${first(one.key)}"] :is(input, select, textarea)`)?.focus());
          }}
        >
          {addLabel}
        </Button>
      )}
    </div>
  );
}
