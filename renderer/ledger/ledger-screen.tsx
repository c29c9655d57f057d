import { Link } from 'wouter';
import strip from '../ui/leaf-strip.module.css';
import { ScreenTitle } from '../ui/screen-title.tsx';
import { tell } from '../ui/words/tell.ts';
import { AheadLeaf } from './ahead/ahead-leaf.tsx';
import { CostsLeaf } from './costs/costs-leaf.tsx';
import { LEDGER_LEAVES, ledgerAddress, type LedgerLeaf } from './ledger-leaf.ts';
import styles from './ledger.module.css';
import { QuotesLeaf } from './quotes/quotes-leaf.tsx';
import { WishesLeaf } from './wishes/wishes-leaf.tsx';

/** What was paid, what is to be paid, what others ask for the same work, and what one is saving for. */
export function LedgerScreen({ leaf }: { readonly leaf: LedgerLeaf }) {
  return (
    <div className={styles.screen}>
      <ScreenTitle>{tell('screen.ledger')}</ScreenTitle>
      <nav aria-label={tell('ledger.leaves')} className={strip.strip}>
        <ul>
          {LEDGER_LEAVES.map((one) => (
            <li key={one}><Link href={ledgerAddress(one)} aria-current={one === leaf ? 'page' : undefined}>{tell(`ledger-leaf.${one}`)}</Link></li>
          ))}
        </ul>
      </nav>
      {leaf === 'costs' && <CostsLeaf />}
      {leaf === 'ahead' && <AheadLeaf />}
      {leaf === 'quotes' && <QuotesLeaf />}
      {leaf === 'wishes' && <WishesLeaf />}
    </div>
  );
}
