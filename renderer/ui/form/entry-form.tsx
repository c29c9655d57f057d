import { Button } from '@mantine/core';
import type { FormEvent, ReactNode } from 'react';
import { tell } from '../words/tell.ts';
import styles from './form.module.css';
import type { Entry } from './use-entry.ts';

interface EntryFormProps<Draft> {
  readonly entry: Entry<Draft>;
  readonly submit: string;
  readonly children: ReactNode;
  readonly onCancel?: () => void;
  /** Another way on, between recording and leaving. */
  readonly other?: { readonly label: string; readonly onPress: () => void };
}

/** A form with its fields, its live region for what was refused, and its buttons in one place. */
export function EntryForm<Draft>({ entry, submit, children, onCancel, other }: EntryFormProps<Draft>) {
  const onSubmit = (event: FormEvent) => {
    event.preventDefault();
    entry.submit();
  };
  return (
    <form className={styles.form} noValidate onSubmit={onSubmit}>
      {entry.found && (
        <p className={styles.found}>
          {tell('form.kept')} <Button size="compact-sm" variant="subtle" onClick={entry.startOver}>{tell('form.start-over')}</Button>
        </p>
      )}
      {children}
      <div className={styles.foot}>
        <p role="alert" className={entry.fault === null ? 'only-said' : styles.fault}>
          {entry.fault !== null && (<><strong>{tell('form.not-done')}</strong> {entry.fault}</>)}
        </p>
        <div className={styles.buttons}>
          <Button type="submit" aria-disabled={entry.sending}>{entry.sending ? tell('form.sending') : submit}</Button>
          {other !== undefined && <Button variant="default" onClick={other.onPress}>{other.label}</Button>}
          {onCancel !== undefined && <Button variant="default" onClick={onCancel}>{tell('form.cancel')}</Button>}
        </div>
      </div>
    </form>
  );
}
