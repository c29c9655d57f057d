import type { Said } from '../../shared-core/views/plan-said.ts';
import { useWords } from '../ui/household.tsx';
import { inOwnMoney } from '../ui/plan/plan-words.ts';
import styles from './parts.module.css';

/** Sentences of the core, one below another, with their amounts as the household writes them. */
export function PartsNotes({ notes }: { readonly notes: readonly Pick<Said, 'text'>[] }) {
  const words = useWords();
  return <ul className={styles.notes}>{[...new Set(notes.map((one) => one.text))].map((text) => <li key={text}>{inOwnMoney(text, words)}</li>)}</ul>;
}
