import { Checkbox } from '@mantine/core';
import { useEditor } from './editor-context.ts';
import styles from './editor.module.css';

interface TickListProps<Value extends string> {
  readonly label: string;
  readonly path: string;
  readonly choices: readonly { readonly value: Value; readonly label: string }[];
  readonly ticked: readonly Value[];
  readonly onChange: (ticked: readonly Value[]) => void;
}

/** Several of a list, each to be ticked; they stand in the order of the list. */
export function TickList<Value extends string>({ label, path, choices, ticked, onChange }: TickListProps<Value>) {
  const { entry } = useEditor();
  const { id, error } = entry.at(path);
  return (
    <fieldset id={id} className={styles.ticks} aria-label={label}>
      {error !== undefined && <p className={styles.fault}>{error}</p>}
      {choices.map(({ value, label: name }) => (
        <Checkbox
          key={value}
          label={name}
          checked={ticked.includes(value)}
          onChange={(event) => {
            const isTicked = event.currentTarget.checked;
            onChange(choices.map((one) => one.value).filter((one) => (one === value ? isTicked : ticked.includes(one))));
          }}
        />
      ))}
    </fieldset>
  );
}
