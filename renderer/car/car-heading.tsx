import { Button } from '@mantine/core';
import type { CarView } from '../../shared-core/views/car-view.ts';
import { useWords } from '../ui/household.tsx';
import { odometerWords } from '../ui/odometer-words.ts';
import { ScreenTitle } from '../ui/screen-title.tsx';
import { tell } from '../ui/words/tell.ts';
import { carFacts, usageWords } from './car-facts.ts';
import type { OpenSheet } from './car-sheet.ts';
import sectionStyles from '../ui/section.module.css';
import styles from './car.module.css';

interface CarHeadingProps {
  readonly view: CarView;
  readonly open: OpenSheet;
}

/** Which car it is, what its odometer says, and what one does most often. */
export function CarHeading({ view, open }: CarHeadingProps) {
  const words = useWords();
  const odometer = odometerWords(view.due.odometer);
  const usage = usageWords(view, words);
  const last = view.readings.find((reading) => reading.standing === 'accepted');
  return (
    <header className={styles.heading}>
      <div className={styles.who}>
        <ScreenTitle>{view.car.name}</ScreenTitle>
        <p className={sectionStyles.soft}>{carFacts(view, words).join(' · ')}</p>
      </div>
      <div className={styles.odometer}>
        <p className={styles.figure}>{odometer ?? tell('odometer.never')}</p>
        <p className={sectionStyles.soft}>{[...(last === undefined ? [] : [tell('odometer.last-read', { date: words.nearDate(last.date, view.today) })]), ...(usage === null ? [] : [usage])].join(' · ')}</p>
      </div>
      <div className={styles.actions}>
        <Button onClick={() => open({ kind: 'record', item: null })}>{tell('records.add')}</Button>
        <Button variant="default" onClick={() => open({ kind: 'reading' })}>{tell('readings.add')}</Button>
        <Button variant="default" onClick={() => open({ kind: 'car' })}>{tell('car.change')}</Button>
        <Button variant="default" onClick={() => open({ kind: 'pack' })}>{tell('pack.open')}</Button>
      </div>
    </header>
  );
}
