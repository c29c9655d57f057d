import type { ReactNode } from 'react';
import styles from './search.module.css';

interface MarkedTextProps {
  readonly text: string;
  readonly marks: readonly (readonly [number, number])[];
}

/** A text with the pieces that were looked for: bold and underlined, so that no colour is needed to see them. */
export function MarkedText({ text, marks }: MarkedTextProps) {
  const pieces: ReactNode[] = [];
  let at = 0;
  for (const [from, to] of marks) {
    pieces.push(text.slice(at, from), <mark key={from} className={styles.mark}>{text.slice(from, to)}</mark>);
    at = to;
  }
  return <>{pieces}{text.slice(at)}</>;
}
