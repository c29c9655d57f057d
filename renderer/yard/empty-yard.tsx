import { Link } from 'wouter';
import { tell } from '../ui/words/tell.ts';
import styles from './yard.module.css';

/** A yard without cars says what to do first. */
export function EmptyYard() {
  return (
    <section className={styles.empty} aria-labelledby="empty-yard">
      <h2 id="empty-yard">{tell('yard.empty-title')}</h2>
      <p>{tell('yard.empty-lead')}</p>
      <ol>
        <li>{tell('yard.empty-1')}</li>
        <li>{tell('yard.empty-2')}</li>
        <li>{tell('yard.empty-3')}</li>
      </ol>
      <Link href="/car" className={styles.emptyAdd}>{tell('yard.empty-add')}</Link>
    </section>
  );
}
