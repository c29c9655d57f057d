import { Button } from '@mantine/core';
import type { CoverageView } from '../../../shared-core/views/coverage-view.ts';
import { recheckWords } from '../../ui/due-words.ts';
import { useWords } from '../../ui/household.tsx';
import { MarkGlyph } from '../../ui/marks/mark-glyph.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import type { OpenSheet } from '../car-sheet.ts';
import sectionStyles from '../../ui/section.module.css';
import carStyles from '../car.module.css';

interface WatchedSectionProps {
  readonly watched: CoverageView['watched'];
  readonly today: CoverageView['today'];
  readonly open: OpenSheet;
}

/** What is to be looked at again of the work shown, the soonest first. */
export function WatchedSection({ watched, today, open }: WatchedSectionProps) {
  const words = useWords();
  const soonest = [...watched].sort((a, b) => (a.recheckOn ?? '9999').localeCompare(b.recheckOn ?? '9999'));
  return (
    <Section title={tell('services.watched')}>
      {soonest.length === 0 && <p className={sectionStyles.soft}>{tell('services.watched-none')}</p>}
      <ul className={sectionStyles.list}>
        {soonest.map(({ id, text, date, recheckOn }) => (
          <li key={id} className={carStyles.row}>
            <MarkGlyph shape="eye" filled={false} tone="plain" />
            <div className={carStyles.rowWords}>
              <strong>{text}</strong>
              <p className={sectionStyles.small}>{[...recheckWords(recheckOn, today, words), tell('observations.seen', { date: words.date(date) })].join(' · ')}</p>
            </div>
            <Button size="compact-sm" variant="default" aria-label={tell('observations.close-for', { text })} onClick={() => open({ kind: 'close', observation: id })}>{tell('observations.close')}</Button>
          </li>
        ))}
      </ul>
    </Section>
  );
}
