import type { ReactNode } from 'react';
import { tell } from '../words/tell.ts';
import styles from './form.module.css';
import type { FieldPlace } from './use-entry.ts';

/** Fields that stand side by side where there is room. */
export function FieldRow({ children }: { readonly children: ReactNode }) {
  return <div className={styles.row}>{children}</div>;
}

/** Fields that most entries leave as they are: folded away, and opened by what is refused in them. */
export function MoreFields({ children }: { readonly children: ReactNode }) {
  return (
    <details className={styles.more}>
      <summary>{tell('form.more')}</summary>
      <div className={styles.inner}>{children}</div>
    </details>
  );
}

interface FieldGroupProps {
  readonly legend: string;
  readonly hint?: string;
  /** Where a refusal of the whole group is shown. */
  readonly place?: FieldPlace;
  readonly children: ReactNode;
}

/** Fields that belong together under one heading. */
export function FieldGroup({ legend, hint, place, children }: FieldGroupProps) {
  const error = place?.error;
  return (
    <fieldset className={styles.group} data-fault={error !== undefined} id={place?.id} tabIndex={place === undefined ? undefined : -1} aria-describedby={error === undefined ? undefined : `${place?.id}-fault`}>
      <legend>{legend}</legend>
      {hint !== undefined && <p className={styles.hint}>{hint}</p>}
      {error !== undefined && <p className={styles.fault} id={`${place?.id}-fault`}>{error}</p>}
      {children}
    </fieldset>
  );
}
