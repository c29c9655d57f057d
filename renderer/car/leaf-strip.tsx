import { Link } from 'wouter';
import { tell } from '../ui/words/tell.ts';
import { leafAddress, LEAVES, type Leaf } from './leaf.ts';
import styles from '../ui/leaf-strip.module.css';

interface LeafStripProps {
  readonly car: string;
  readonly chosen: Leaf;
}

/** The leaves of a car's file by name, each one press away. */
export function LeafStrip({ car, chosen }: LeafStripProps) {
  return (
    <nav aria-label={tell('leaves.list')} className={styles.strip}>
      <ul>
        {LEAVES.map((leaf) => (
          <li key={leaf}><Link href={leafAddress(car, leaf)} aria-current={leaf === chosen ? 'page' : undefined}>{tell(`leaf.${leaf}`)}</Link></li>
        ))}
      </ul>
    </nav>
  );
}
