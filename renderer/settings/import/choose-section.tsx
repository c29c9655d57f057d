import { Button, FileButton, Textarea } from '@mantine/core';
import { useId, useRef, useState } from 'react';
import { sayFault } from '../../ui/form/say-fault.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { pastedTable } from './read-table.ts';
import { sizeWords } from './count-words.ts';
import type { ChosenTable } from './table-draft.ts';
import type { Drop } from './use-drop.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './import.module.css';

interface ChooseSectionProps {
  readonly table: ChosenTable | null;
  readonly drop: Drop;
  readonly onPutAway: () => void;
}

/** Where a table is chosen, dropped or pasted, and which one is looked at. */
export function ChooseSection({ table, drop, onPutAway }: ChooseSectionProps) {
  const reset = useRef<() => void>(null);
  const read = (files: File[]) => {
    drop.read(files);
    // Else the browser keeps silent when the very same file is chosen again.
    reset.current?.();
  };
  return (
    <Section id="import-which" title={tell('import.which')}>
      {table === null && <p className={sectionStyles.soft}>{tell('import.which-what')}</p>}
      {table !== null && <p className={styles.name}>{tell('import.about', { name: table.name ?? tell('import.unnamed'), size: sizeWords(table.bytes) })}</p>}
      <div className={styles.buttons}>
        {/* Of several files, which some ways of choosing give, none is silently left out. */}
        <FileButton multiple resetRef={reset} onChange={read}>
          {(props) => <Button {...props} variant={table === null ? 'filled' : 'default'}>{tell(table === null ? 'import.choose' : 'import.choose-another')}</Button>}
        </FileButton>
        {table !== null && <Button variant="default" onClick={onPutAway}>{tell('import.put-away')}</Button>}
        {drop.over && <p className={styles.over}>{tell('import.drop')}</p>}
      </div>
      <p role="alert" className={drop.refusal === null ? 'only-said' : styles.fault}>{drop.refusal !== null && sayFault(drop.refusal)}</p>
      {table === null && <PasteForm drop={drop} />}
    </Section>
  );
}

function PasteForm({ drop }: { readonly drop: Drop }) {
  const [text, setText] = useState('');
  const id = useId();
  return (
    <details className={styles.paste}>
      <summary>{tell('import.paste')}</summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          drop.take(pastedTable(text));
        }}
      >
        <Textarea id={id} label={tell('import.pasted')} rows={6} value={text} spellCheck={false} autoComplete="off" onChange={(event) => setText(event.currentTarget.value)} />
        <Button type="submit">{tell('import.look')}</Button>
      </form>
    </details>
  );
}
