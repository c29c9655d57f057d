import { Link } from 'wouter';
import strip from '../ui/leaf-strip.module.css';
import { ScreenTitle } from '../ui/screen-title.tsx';
import { tell } from '../ui/words/tell.ts';
import { CheckLeaf } from './check-leaf.tsx';
import { HANDOVER_LEAVES, handoverAddress, type HandoverLeaf } from './handover-leaf.ts';
import styles from './handover.module.css';
import { LeaveLeaf } from './leave-leaf.tsx';
import { SealLeaf } from './seal-leaf.tsx';
import { WriteLeaf } from './write-leaf.tsx';

interface HandoverScreenProps {
  readonly leaf: HandoverLeaf;
  /** The car to begin with; null: the first one. */
  readonly car: string | null;
}

/** All that passes from one keeper to the next: packs written and checked, cars that leave, seals. */
export function HandoverScreen({ leaf, car }: HandoverScreenProps) {
  return (
    <div className={styles.screen}>
      <ScreenTitle>{tell('screen.handover')}</ScreenTitle>
      <nav aria-label={tell('handover.leaves')} className={strip.strip}>
        <ul>
          {HANDOVER_LEAVES.map((one) => (
            <li key={one}><Link href={handoverAddress(one)} aria-current={one === leaf ? 'page' : undefined}>{tell(`handover-leaf.${one}`)}</Link></li>
          ))}
        </ul>
      </nav>
      {leaf === 'write' && <WriteLeaf car={car} />}
      {leaf === 'check' && <CheckLeaf />}
      {leaf === 'leave' && <LeaveLeaf car={car} />}
      {leaf === 'seal' && <SealLeaf />}
    </div>
  );
}
