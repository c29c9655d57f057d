import { Button } from '@mantine/core';
import { useState } from 'react';
import type { CarView } from '../../shared-core/views/car-view.ts';
import { useWords } from '../ui/household.tsx';
import { shapeOfFollowUp } from '../ui/marks/follow-up-shape.ts';
import { MarkGlyph } from '../ui/marks/mark-glyph.tsx';
import { PutOffButton } from '../ui/put-off-button.tsx';
import { Section } from '../ui/section.tsx';
import { placeOf, useSought } from '../ui/sought.ts';
import { dropFollowUp, tickFollowUp } from '../ui/tick-follow-up.ts';
import { tell } from '../ui/words/tell.ts';
import type { OpenSheet } from './car-sheet.ts';
import sectionStyles from '../ui/section.module.css';
import styles from './car.module.css';

interface FollowUpsSectionProps {
  readonly view: CarView;
  readonly open: OpenSheet;
}

/** What is to be looked at again after a work, each ticked with one press; what is ticked is folded away. */
export function FollowUpsSection({ view, open }: FollowUpsSectionProps) {
  const words = useWords();
  const [pressed, setAll] = useState(false);
  const sought = useSought();
  const { due: { followUps }, followUpsDone: done } = view;
  const all = pressed || done.some((one) => sought === `follow-up-${one.id}`);
  return (
    <Section title={tell('follow-ups.title')} add={{ label: tell('follow-ups.add'), onAdd: () => open({ kind: 'follow-up' }) }}>
      {followUps.length + done.length === 0 && <p className={sectionStyles.soft}>{tell('follow-ups.none')}</p>}
      <ul className={sectionStyles.list}>
        {followUps.map((one) => <FollowUpRow key={one.followUp.id} one={one} today={view.today} unit={view.car.unit} />)}
        {all && done.map(({ id, text, doneOn, note }) => (
          <li key={id} {...placeOf('follow-up', id)} className={styles.row}>
            <MarkGlyph shape="eye" filled={false} tone="plain" />
            <div className={styles.rowWords}>
              {text}
              <p className={sectionStyles.small}>{[tell('follow-ups.done', { date: words.date(doneOn ?? view.today) }), ...(note === '' ? [] : [note])].join(' · ')}</p>
            </div>
          </li>
        ))}
      </ul>
      {done.length > 0 && <Button size="compact-sm" variant="subtle" aria-expanded={all} onClick={() => setAll(!all)}>{all ? tell('follow-ups.hide-done') : tell('follow-ups.show-done', { n: done.length })}</Button>}
    </Section>
  );
}

function FollowUpRow({ one, today, unit }: { readonly one: CarView['due']['followUps'][number]; readonly today: CarView['today']; readonly unit: CarView['car']['unit'] }) {
  const { followUp, itemName, text } = one;
  return (
    <li id={`follow-up-${followUp.id}`} tabIndex={-1} data-place className={styles.row}>
      <MarkGlyph {...shapeOfFollowUp(one, today)} />
      <div className={styles.rowWords}>
        <strong>{followUp.text}</strong>
        <p>{itemName === null ? text : tell('follow-ups.after', { item: itemName, text })}</p>
        {one.putOff !== '' && <p className={sectionStyles.small}>{one.putOff}</p>}
        {followUp.note !== '' && <p className={sectionStyles.small}>{followUp.note}</p>}
      </div>
      <div className={styles.rowActions}>
        <Button size="compact-sm" variant="default" aria-label={tell('follow-ups.tick-for', { text: followUp.text })} onClick={() => void tickFollowUp(followUp)}>{tell('follow-ups.tick')}</Button>
        <PutOffButton followUp={followUp} unit={unit} />
        <Button size="compact-sm" variant="subtle" aria-label={tell('follow-ups.drop-for', { text: followUp.text })} onClick={() => void dropFollowUp(followUp)}>{tell('follow-ups.drop')}</Button>
      </div>
    </li>
  );
}
