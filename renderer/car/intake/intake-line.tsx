import { Link } from 'wouter';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { leafAddress } from '../leaf.ts';
import styles from './intake.module.css';

/** One line where nobody has said what is known of a car's items, with the way to say it. */
export function IntakeLine({ car }: { readonly car: string }) {
  const answer = useAsk('intake.show', { car });
  if (answer.state !== 'answered' || answer.value.counts.open === 0) return null;
  return <p className={styles.line}>{tell('intake.line', { n: answer.value.counts.open })} <Link href={leafAddress(car, 'intake')}>{tell('intake.line-link')}</Link></p>;
}
