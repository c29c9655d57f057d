import { Button } from '@mantine/core';
import { useState } from 'react';
import type { CarView } from '../../shared-core/views/car-view.ts';
import { arrangeFromWords } from '../ui/due-words.ts';
import { useWords } from '../ui/household.tsx';
import { MarkGlyph } from '../ui/marks/mark-glyph.tsx';
import { shapeOfRecall } from '../ui/marks/mark-shape.ts';
import { Section } from '../ui/section.tsx';
import { useSought } from '../ui/sought.ts';
import { tell } from '../ui/words/tell.ts';
import type { OpenSheet } from './car-sheet.ts';
import sectionStyles from '../ui/section.module.css';
import styles from './car.module.css';

interface RecallsSectionProps {
  readonly view: CarView;
  readonly open: OpenSheet;
}

type RecallView = CarView['recalls'][number];

/** What the maker calls the car back for: what is still to be done stands first, what is done is folded away. */
export function RecallsSection({ view, open }: RecallsSectionProps) {
  const [pressed, setAll] = useState(false);
  const sought = useSought();
  const done = view.recalls.filter((one) => one.state === 'done');
  const all = pressed || done.some((one) => sought === `recall-${one.recall.id}`);
  const shown = view.recalls.filter((one) => all || one.state !== 'done');
  return (
    <Section title={tell('recalls.title')} add={{ label: tell('recalls.add'), onAdd: () => open({ kind: 'recall', recall: null }) }}>
      {view.recalls.length === 0 && <p className={sectionStyles.soft}>{tell('recalls.none')}</p>}
      <ul className={sectionStyles.list}>
        {shown.map((one) => <RecallRow key={one.recall.id} one={one} today={view.today} open={open} />)}
      </ul>
      {done.length > 0 && <Button size="compact-sm" variant="subtle" aria-expanded={all} onClick={() => setAll(!all)}>{all ? tell('recalls.hide-done') : tell('recalls.show-done', { n: done.length })}</Button>}
    </Section>
  );
}

interface RecallRowProps {
  readonly one: RecallView;
  readonly today: CarView['today'];
  readonly open: OpenSheet;
}

function RecallRow({ one, today, open }: RecallRowProps) {
  const { recall, state, late, arrangeFrom, text } = one;
  const words = useWords();
  const { id, number, what, how, doneBy } = recall;
  const edit = () => open({ kind: 'recall', recall: id });
  return (
    <li id={`recall-${id}`} tabIndex={-1} data-place className={styles.row}>
      <MarkGlyph {...shapeOfRecall(one, today)} />
      <div className={styles.rowWords}>
        <strong>{number}</strong> {what}
        <p>{text}</p>
        {how !== null && <p className={sectionStyles.small}>{doneBy === null ? how : tell('recalls.done-by', { how, name: doneBy })}</p>}
        {state === 'open' || late || arrangeFrom === null ? null : <p className={sectionStyles.small}>{arrangeFromWords(arrangeFrom, today, words)}</p>}
      </div>
      {state === 'open' || state === 'booked'
        ? <Button size="compact-sm" variant="default" aria-label={tell('recalls.done-for', { number })} onClick={edit}>{tell('recalls.done')}</Button>
        : <Button size="compact-sm" variant="subtle" aria-label={tell('recalls.change-for', { number })} onClick={edit}>{tell('items.change')}</Button>}
    </li>
  );
}
