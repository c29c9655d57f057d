import { Button } from '@mantine/core';
import { daysBetween } from '../../shared-core/calendar/local-date.ts';
import type { CarView } from '../../shared-core/views/car-view.ts';
import { arrangeFromWords } from '../ui/due-words.ts';
import { useWords } from '../ui/household.tsx';
import { MarkGlyph } from '../ui/marks/mark-glyph.tsx';
import { shapeOfObligation } from '../ui/marks/mark-shape.ts';
import { Section } from '../ui/section.tsx';
import { tell } from '../ui/words/tell.ts';
import type { OpenSheet } from './car-sheet.ts';
import sectionStyles from '../ui/section.module.css';
import styles from './car.module.css';

interface ObligationsSectionProps {
  readonly view: CarView;
  readonly open: OpenSheet;
}

/** The car's dated duties, soonest first. */
export function ObligationsSection({ view, open }: ObligationsSectionProps) {
  const words = useWords();
  const { obligations } = view.due;
  return (
    <Section title={tell('obligations.title')} add={{ label: tell('obligations.add'), onAdd: () => open({ kind: 'obligation', obligation: null }) }}>
      {obligations.length === 0 && <p className={sectionStyles.soft}>{tell('obligations.none')}</p>}
      <ul className={sectionStyles.list}>
        {obligations.map((one) => (
          <li key={one.id} id={`obligation-${one.id}`} tabIndex={-1} data-place className={styles.row}>
            <MarkGlyph {...shapeOfObligation(one, view.today)} />
            <div className={styles.rowWords}>
              <strong>{one.name}</strong>
              <p>{[...(one.late ? [tell('obligation.late-days', { n: daysBetween(one.on, view.today) })] : []), tell('obligation.by', { date: words.date(one.on) })].join(' · ')}</p>
              {!(one.late && one.opens === null) && <p className={sectionStyles.small}>{one.opens === null ? arrangeFromWords(one.from, view.today, words) : tell('obligation.opens', { date: words.date(one.opens) })}</p>}
            </div>
            <div className={styles.rowActions}>
              <Button size="compact-sm" variant="default" aria-label={tell('obligations.renew-for', { name: one.name })} onClick={() => open({ kind: 'renew', obligation: one.id })}>{tell('obligations.renew')}</Button>
              <Button size="compact-sm" variant="subtle" aria-label={tell('items.change-for', { item: one.name })} onClick={() => open({ kind: 'obligation', obligation: one.id })}>{tell('items.change')}</Button>
            </div>
          </li>
        ))}
      </ul>
    </Section>
  );
}
