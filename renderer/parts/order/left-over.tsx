import type { OrderView } from '../../../shared-core/views/order-view-schema.ts';
import { useAsk } from '../../ui/use-ask.ts';
import { useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import styles from '../parts.module.css';

/** What then stands on the shelf, old stock included. */
export function LeftOver({ proposal }: { readonly proposal: OrderView }) {
  const { byName } = useWords();
  const view = useAsk('parts.show', {});
  if (view.state !== 'answered' || proposal.left.length === 0) return null;
  const parts = new Map(view.value.parts.map((one) => [one.part.id, one]));
  const left = proposal.left.map(({ part, quantity }) => ({ id: part, name: parts.get(part)?.part.name ?? part, amount: amountWords(quantity, parts.get(part)?.unit ?? null) })).sort((a, b) => byName(a.name, b.name));
  return (
    <>
      <h3>{tell('left-over.title')}</h3>
      <ul className={styles.notes}>{left.map((one) => <li key={one.id}>{tell('left-over.one', { part: one.name, amount: one.amount })}</li>)}</ul>
    </>
  );
}
