import type { Said } from '../../shared-core/views/plan-said.ts';
import { useWords } from '../ui/household.tsx';
import { inOwnMoney } from '../ui/plan/plan-words.ts';
import { ShownMore } from './shown-more.tsx';
import styles from './parts.module.css';

const FIRST = 8;

/** Sentences of the core, one below another, with their amounts as the household writes them; the first of many, so that what stands below stays near. */
export function PartsNotes({ notes }: { readonly notes: readonly Pick<Said, 'text'>[] }) {
  const words = useWords();
  const texts = [...new Set(notes.map((one) => one.text))];
  return <ShownMore items={texts} first={FIRST}>{(shown) => <ul className={styles.notes}>{shown.map((text) => <li key={text}>{inOwnMoney(text, words)}</li>)}</ul>}</ShownMore>;
}
