import { Button } from '@mantine/core';
import { useState } from 'react';
import { minutesWords } from '../../ui/due-words.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import type { OpenSheet } from '../car-sheet.ts';
import type { IntakeItem } from './answers.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './intake.module.css';

interface AdviceSectionProps {
  readonly when: 'now' | 'look' | 'wait';
  readonly items: readonly IntakeItem[];
  /** Minutes of all that have them; null where they are not summed. */
  readonly minutes: number | null;
  readonly open: OpenSheet;
}

const SHOWN = 10;

/** What to do about a part of the items, each with its reason and the time it takes. */
export function AdviceSection({ when, items, minutes, open }: AdviceSectionProps) {
  const [all, setAll] = useState(false);
  return (
    <Section title={tell(`advice.${when}`)}>
      {items.length === 0 && <p className={sectionStyles.soft}>{tell(`advice.none-${when}`)}</p>}
      {items.length > 0 && minutes !== null && <p>{sumWords(items, minutes)}</p>}
      <ul className={styles.advice}>
        {(all ? items : items.slice(0, SHOWN)).map((item) => <AdviceLine key={item.item} item={item} onRecord={when === 'wait' ? null : () => open({ kind: 'record', item: item.item })} />)}
      </ul>
      {items.length > SHOWN && <Button size="compact-sm" variant="subtle" aria-expanded={all} onClick={() => setAll(!all)}>{all ? tell('advice.fewer') : tell('advice.all', { n: items.length })}</Button>}
    </Section>
  );
}

function AdviceLine({ item, onRecord }: { readonly item: IntakeItem; readonly onRecord: (() => void) | null }) {
  const words = useWords();
  const { name, minutes, until, exact, reason } = item;
  const facts = [...(until === null ? [] : [tell('advice.until', { date: exact ? words.date(until) : words.month(until) })]), ...(minutes === null ? [] : [minutesWords(minutes)])];
  return (
    <li>
      <div>
        <p><strong>{name}</strong>{facts.length > 0 && <span className={styles.stand}> {facts.join(' · ')}</span>}</p>
        <p className={styles.stand}>{reason.text}</p>
      </div>
      {onRecord !== null && <Button size="compact-sm" variant="default" aria-label={tell('advice.record-for', { item: name })} onClick={onRecord}>{tell('advice.record')}</Button>}
    </li>
  );
}

function sumWords(items: readonly IntakeItem[], minutes: number): string {
  const without = items.filter((item) => item.minutes === null).length;
  if (without === items.length) return tell('advice.sum-none', { n: without });
  return without === 0 ? tell('advice.sum', { time: minutesWords(minutes) }) : tell('advice.sum-without', { time: minutesWords(minutes), n: without });
}
