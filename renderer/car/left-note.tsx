import { Link } from 'wouter';
import { useWords } from '../ui/household.tsx';
import { useAsk } from '../ui/use-ask.ts';
import { tell } from '../ui/words/tell.ts';
import styles from './car.module.css';

/** Says of a car that it has left, and leads to where it can be taken back. */
export function LeftNote({ car }: { readonly car: string }) {
  const words = useWords();
  const answer = useAsk('car.left', {});
  const departure = answer.state === 'answered' ? answer.value.cars.find((one) => one.car.id === car)?.departure : undefined;
  if (departure === undefined) return null;
  return <p className={styles.gone}>{tell(`handover.car-is-gone-${departure.how}`, { date: words.date(departure.on) })} <Link href="/handover/leave">{tell('handover.to-left')}</Link></p>;
}
