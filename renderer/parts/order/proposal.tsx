import type { OrderView } from '../../../shared-core/views/order-view-schema.ts';
import type { HouseholdWords } from '../../ui/household-words.ts';
import { useWords } from '../../ui/household.tsx';
import { inOwnMoney } from '../../ui/plan/plan-words.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { PartsNotes } from '../parts-notes.tsx';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { Against } from './against.tsx';
import { OrderCost } from './order-cost.tsx';
import { OrderNeeds } from './order-needs.tsx';
import { useOrdering } from './ordering.ts';
import { SupplierSection } from './supplier-section.tsx';
import styles from '../parts.module.css';
import sectionStyles from '../../ui/section.module.css';
import tones from '../../ui/tones.module.css';

interface ProposalProps {
  readonly proposal: OrderView;
  readonly open: OpenPartsSheet;
}

/** An order that was worked out: its proof, what to look at first, its part for each supplier, what it costs and what it is held against. */
export function Proposal({ proposal, open }: ProposalProps) {
  const words = useWords();
  const { outdated, placed, stopped } = useOrdering();
  const heldAgainst = proposal.perCar.cars.length > 0 || proposal.perSupplier.length > 0;
  if (proposal.needs.length === 0) return <Section title={tell('order.proof')}><p>{tell('order.nothing-needed', { n: proposal.horizonDays })}</p></Section>;
  return (
    <>
      <Section title={tell('order.proof')}>
        {outdated && <p className={tones.soon} role="status"><strong>{tell('order.outdated')}</strong></p>}
        <p className={styles.lead}>{termsWords(proposal, words)}</p>
        {proposal.proof.map((one, at) => <p key={one.text} className={styles.lead}>{at === 0 ? <strong>{inOwnMoney(one.text, words)}</strong> : inOwnMoney(one.text, words)}</p>)}
        {stopped && !heldAgainst && <p className={styles.lead}>{tell('order.stopped-short')}</p>}
      </Section>
      {proposal.notes.length > 0 && <Section title={tell('order.notes')}><PartsNotes notes={proposal.notes} /></Section>}
      <div className={styles.columns}>
        <div className={styles.leaf}>
          {proposal.orders.length === 0 && <Section title={tell('order.nothing-title')}><p>{tell('order.nothing-to-buy')}</p></Section>}
          {proposal.orders.map((order, at) => {
            const sheet = proposal.sheets[at];
            return sheet === undefined ? null : <SupplierSection key={order.supplier} order={order} sheet={sheet} isPlaced={placed.includes(order.supplier)} open={open} />;
          })}
        </div>
        <div className={styles.leaf}>
          <OrderCost proposal={proposal} />
          <Against proposal={proposal} />
        </div>
      </div>
      {proposal.wishes.length > 0 && (
        <Section title={tell('order.wishes')} hint={tell('order.wishes-what')}>
          <ul className={sectionStyles.list}>
            {proposal.wishes.map((one) => <li key={one.wish} className={styles.row}><span><strong>{tell('order.wish', { wish: one.name, car: one.carName })}</strong> {inOwnMoney(one.why.text, words)}</span></li>)}
          </ul>
        </Section>
      )}
      <OrderNeeds proposal={proposal} />
    </>
  );
}

function termsWords({ terms, horizonDays, orders }: OrderView, words: HouseholdWords): string {
  return [
    tell('order.for-days', { n: horizonDays }),
    ...(terms.onlySupplier === null ? [] : [tell('order.term-only', { supplier: orders[0]?.supplierName ?? terms.onlySupplier })]),
    ...(terms.arriveBy === null ? [] : [tell('order.term-by', { date: words.date(terms.arriveBy) })]),
    ...(terms.noLeftovers ? [tell('order.term-no-leftovers')] : []),
  ].join(' · ');
}
