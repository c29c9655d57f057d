import type { JobPart } from '../../../shared-core/views/job-sheet-view-schema.ts';
import type { HouseholdWords } from '../../ui/household-words.ts';
import { useWords } from '../../ui/household.tsx';
import { amountWords } from '../../ui/amount-words.ts';
import { tell } from '../../ui/words/tell.ts';
import styles from './sheet.module.css';

/** A part that a task needs, how much of it, and where it stands: on the shelf, on the way, or missing. */
export function PartLine({ part }: { readonly part: JobPart }) {
  const words = useWords();
  const standing = standingWords(part, words);
  return (
    <span>
      <strong>{tell('job.part', { amount: amountWords(part.quantity, part.unit), specification: part.specificationName })}</strong>
      {standing.length > 0 && `: ${standing.join('; ')}`}
      {part.lacking > 0 && <>{standing.length > 0 ? '; ' : ': '}<strong className={styles.late}>{tell('job.part-missing', { amount: amountWords(part.lacking, part.unit) })}</strong>, {orderWords(part, words)}</>}
    </span>
  );
}

function standingWords({ taken, coming, comingOn, unit }: JobPart, words: HouseholdWords): readonly string[] {
  const shelf = taken.map((lot) => tell(lot.where === null ? 'job.part-taken' : 'job.part-taken-where', { amount: amountWords(lot.quantity, unit), part: lot.partName, where: lot.where ?? '' }));
  return coming > 0 && comingOn !== null ? [...shelf, tell('job.part-coming', { amount: amountWords(coming, unit), date: words.date(comingOn) })] : shelf;
}

function orderWords({ orders }: JobPart, words: HouseholdWords): string {
  const late = orders.filter((order) => !order.inTime);
  if (late.length === 0) return tell('job.part-not-ordered');
  return tell('job.part-late', { orders: late.map((order) => tell(order.number === null ? 'job.part-order' : 'job.part-order-number', { supplier: order.supplierName, number: order.number ?? '', date: words.date(order.expectedOn) })).join('; ') });
}
