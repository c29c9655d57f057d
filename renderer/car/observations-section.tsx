import { Button } from '@mantine/core';
import type { CarView } from '../../shared-core/views/car-view.ts';
import { AmendObservation } from '../ui/amend-observation.tsx';
import { recheckWords } from '../ui/due-words.ts';
import type { HouseholdWords } from '../ui/household-words.ts';
import { useWords } from '../ui/household.tsx';
import { MarkGlyph } from '../ui/marks/mark-glyph.tsx';
import { Section } from '../ui/section.tsx';
import { tell } from '../ui/words/tell.ts';
import type { OpenSheet } from './car-sheet.ts';
import sectionStyles from '../ui/section.module.css';
import styles from './car.module.css';

interface ObservationsSectionProps {
  readonly view: CarView;
  readonly open: OpenSheet;
}

/** What was seen and needs another look; settled ones stay to be seen, after the open ones. */
export function ObservationsSection({ view, open }: ObservationsSectionProps) {
  const words = useWords();
  const openFirst = [...view.observations].sort((a, b) => Number(a.closedOn !== null) - Number(b.closedOn !== null));
  return (
    <Section title={tell('observations.title')} add={{ label: tell('observations.add'), onAdd: () => open({ kind: 'observation' }) }}>
      {openFirst.length === 0 && <p className={sectionStyles.soft}>{tell('observations.none')}</p>}
      <ul className={sectionStyles.list}>
        {openFirst.map((seen) => (
          <li key={seen.id} id={`observation-${seen.id}`} tabIndex={-1} data-place className={styles.row}>
            <MarkGlyph shape="eye" filled={false} tone={seen.closedOn === null && seen.severity === 'unsafe' ? 'late' : 'plain'} />
            <div className={styles.rowWords}>
              {seen.closedOn === null ? <strong>{seen.text}</strong> : <span>{seen.text}</span>}
              <p className={sectionStyles.small}>{[...(view.earlier.some((one) => one.id === seen.id) ? [tell('earlier.keeper')] : []), ...remarks(seen, view.today, words)].join(' · ')}</p>
            </div>
            {seen.closedOn === null && (
              <div className={styles.rowActions}>
                <AmendObservation seen={seen} />
                <Button size="compact-sm" variant="default" aria-label={tell('observations.close-for', { text: seen.text })} onClick={() => open({ kind: 'close', observation: seen.id })}>{tell('observations.close')}</Button>
              </div>
            )}
          </li>
        ))}
      </ul>
    </Section>
  );
}

function remarks(seen: CarView['observations'][number], today: CarView['today'], words: HouseholdWords): string[] {
  if (seen.closedOn !== null) return [tell('observations.closed', { date: words.date(seen.closedOn) })];
  return [tell(`severity.${seen.severity}`), tell('observations.seen', { date: words.date(seen.date) }), ...recheckWords(seen.recheckOn, today, words)];
}
