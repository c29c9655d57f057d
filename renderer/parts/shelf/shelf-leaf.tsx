import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { CountsSection } from './counts-section.tsx';
import { LotsSection } from './lots-section.tsx';
import { WasteSection } from './waste-section.tsx';
import styles from '../parts.module.css';

interface ShelfLeafProps {
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
}

/** What stands on the shelf, what is kept for disposal, and the counts. */
export function ShelfLeaf({ view, open }: ShelfLeafProps) {
  const words = useWords();
  const standing = view.shelf.filter((one) => one.left > 0);
  const expired = standing.filter((one) => one.state === 'expired').length;
  const worth = standing.reduce((sum, one) => sum + (one.worthMinor ?? 0), 0);
  const sentence = standing.length === 0 ? tell('shelf.empty') : `${tell('shelf.sum', { n: standing.length, amount: words.money(worth) })}${expired === 0 ? '' : ` ${tell('shelf.sum-expired', { n: expired })}`}`;
  return (
    <div className={styles.leaf}>
      <p className={styles.lead}>{sentence}</p>
      <LotsSection view={view} open={open} />
      <WasteSection view={view} open={open} />
      <CountsSection view={view} />
    </div>
  );
}
