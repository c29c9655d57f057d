import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { tell } from '../../ui/words/tell.ts';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { Proposal } from './proposal.tsx';
import { TermsForm } from './terms-form.tsx';
import { useOrdering } from './ordering.ts';
import styles from '../parts.module.css';
import sectionStyles from '../../ui/section.module.css';

interface OrderLeafProps {
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
}

/** The order for all cars: what it keeps to, working it out, its proof, its parts by supplier, and what it is held against. */
export function OrderLeaf({ view, open }: OrderLeafProps) {
  const { view: proposal, running } = useOrdering();
  return (
    <div className={styles.leaf}>
      <TermsForm view={view} />
      {proposal === null && !running && <p className={sectionStyles.soft}>{tell('order.none-yet')}</p>}
      {proposal !== null && <Proposal proposal={proposal} open={open} />}
    </div>
  );
}
