import type { CarView } from '../../../shared-core/views/car-view.ts';
import { useHousehold, useWords } from '../../ui/household.tsx';
import type { HouseholdWords } from '../../ui/household-words.ts';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import sectionStyles from '../../ui/section.module.css';
import type { OpenDistanceSheet } from './distance-sheet.ts';
import styles from './distance.module.css';
import { SeasonStrip } from './season-strip.tsx';

interface UseSectionProps {
  readonly view: CarView;
  readonly open: OpenDistanceSheet;
}

/** How far the car goes in a year, what that is made of, and what the keeper should know of it. */
export function UseSection({ view, open }: UseSectionProps) {
  const words = useWords();
  const { hemisphere } = useHousehold();
  const { usage, usageNotes, car } = view;
  return (
    <Section title={tell('use.title')} add={{ label: tell('use.expected'), onAdd: () => open({ kind: 'expected' }) }}>
      {usage === null && <p className={sectionStyles.soft}>{tell('use.none')}</p>}
      {usage !== null && (
        <>
          <p className={styles.figure}>{tell('use.a-year', { distance: words.distance(usage.aYear, usage.unit) })}</p>
          <p>{evidenceWords(usage, words)}</p>
        </>
      )}
      {usage === null && car.declaredAYear !== null && <p>{tell('use.expects', { distance: words.distance(car.declaredAYear.value, car.declaredAYear.unit) })}</p>}
      {usageNotes.length > 0 && <ul className={styles.notes}>{usageNotes.map((one) => <li key={one.code + one.text}>{one.text}</li>)}</ul>}
      {usage !== null && <SeasonStrip months={usage.months} laidUp={car.laidUpMonths} said={tell(`use.season-${hemisphere}`)} />}
    </Section>
  );
}

type Usage = NonNullable<CarView['usage']>;

/** What the rate is made of, and how much of it is still a guess. */
function evidenceWords({ prior, readings, since, measuredAYear, declaredAYear, unit, guessed }: Usage, words: HouseholdWords): string {
  return [
    since === null ? tell('use.by-readings', { n: readings }) : tell('use.by-readings-since', { n: readings, date: words.date(since) }),
    ...(measuredAYear === null ? [] : [tell('use.measured', { distance: words.distance(measuredAYear, unit) })]),
    ...(declaredAYear === null ? [] : [tell('use.expects', { distance: words.distance(declaredAYear.value, declaredAYear.unit) })]),
    tell(prior === 'declared' ? 'use.guessed-declared' : 'use.guessed', { guessed, read: 100 - guessed }),
  ].join(' ');
}
