import type { StandingNeed } from '../../../shared-core/views/needs-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import styles from '../parts.module.css';
import tones from '../../ui/tones.module.css';

const NAMED = 3;
const LOOK = { 'on-shelf': tones.later, 'on-the-way': tones.later, missing: '' } as const;

/** Whether a need is on the shelf, on the way or missing, with what of each; and what meets it, or is to be entered. */
export function NeedStands({ need, today }: { readonly need: StandingNeed; readonly today: string }) {
  const words = useWords();
  const { state, taken, coming, comingOn, lacking, unit, gap } = need;
  const some = taken.length > 0 || coming > 0;
  const parts = [
    ...together(taken).map((one) => tell(one.where === null ? 'needed.from-shelf' : 'needed.from-shelf-where', { amount: amountWords(one.quantity, unit), part: one.partName, where: one.where ?? '' })),
    ...(coming > 0 ? [tell('needed.from-order', { amount: amountWords(coming, unit), date: comingOn === null ? '' : words.nearDate(comingOn, today) })] : []),
    ...(lacking > 0 && some ? [tell('needed.lacking', { amount: amountWords(lacking, unit) })] : []),
  ];
  return (
    <>
      <span className={`${styles.state} ${LOOK[state] ?? ''}`}>{tell(`needed.state-${state}`)}</span>
      {parts.length > 0 && <div className={sectionStyles.small}>{parts.join(' · ')}</div>}
      {state === 'missing' && gap === null && <div className={sectionStyles.small}>{tell('needed.met-by', { parts: metByWords(need) })}</div>}
      {gap !== null && <div className={tones.soon}>{gap.said.text}</div>}
    </>
  );
}

/** Lots of one part in one place are said as one. */
function together(taken: StandingNeed['taken']): StandingNeed['taken'] {
  const isTogether = (one: (typeof taken)[number]) => (other: (typeof taken)[number]) => other.part === one.part && other.where === one.where;
  return taken.filter((one, at) => taken.findIndex(isTogether(one)) === at).map((one) => ({ ...one, quantity: taken.filter(isTogether(one)).reduce((sum, { quantity }) => sum + Math.round(quantity * 1000), 0) / 1000 }));
}

function metByWords({ metBy }: StandingNeed): string {
  const offered = metBy.filter((one) => one.offers > 0).map((one) => one.partName);
  const named = offered.slice(0, NAMED).join(', ');
  return offered.length <= NAMED ? named : tell('needed.and-more', { parts: named, n: offered.length - NAMED });
}
