import { Button } from '@mantine/core';
import { useId } from 'react';
import type { PlanningPlace, PlanningView } from '../../../shared-core/views/planning-view.ts';
import { minutesWords } from '../../ui/due-words.ts';
import { useWords } from '../../ui/household.tsx';
import type { HouseholdWords } from '../../ui/household-words.ts';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { daysWords } from './days-words.ts';
import styles from './planning.module.css';
import type { OpenPlanningSheet } from './planning-sheet.ts';
import { takeAway } from './take-away.ts';
import { weekdayNames } from './weekdays.tsx';

interface PlacesSectionProps {
  readonly view: PlanningView;
  readonly open: OpenPlanningSheet;
}

/** The home and the garages, each with what it asks and the days on which it is closed or open against its habit. */
export function PlacesSection({ view, open }: PlacesSectionProps) {
  return (
    <Section title={tell('places.title')} hint={tell('places.hint')} add={{ label: tell('places.add'), onAdd: () => open({ kind: 'place', place: null }) }}>
      <ul className={sectionStyles.list}>
        {view.places.map((place) => <PlaceRow key={place.id} place={place} view={view} open={open} />)}
      </ul>
    </Section>
  );
}

function PlaceRow({ place, view, open }: PlacesSectionProps & { readonly place: PlanningPlace }) {
  const words = useWords();
  const id = useId();
  const named = { place: place.name };
  return (
    <li className={styles.row}>
      <div className={styles.head}>
        <h3 id={id}>{place.name}</h3>
        <div className={styles.buttons}>
          <Button size="compact-sm" variant="default" aria-label={tell(place.assumed ? 'places.enter-of' : 'places.change-of', named)} onClick={() => open({ kind: 'place', place: place.id })}>{tell(place.assumed ? 'places.enter' : 'places.change')}</Button>
          {!place.assumed && <Button size="compact-sm" variant="default" aria-label={tell('places.remove-of', named)} onClick={() => void takeAway('place.remove', place.id, tell('places.removed', named))}>{tell('places.remove')}</Button>}
          <Button size="compact-sm" variant="default" aria-label={tell('places.days-add-of', named)} onClick={() => open({ kind: 'place-days', place: place.id, days: null })}>{tell('places.days-add')}</Button>
        </div>
      </div>
      <p className={styles.soft}>{placeWords(place, view, words).join(' · ')}</p>
      {place.days.length > 0 && (
        <ul className={styles.inner} aria-labelledby={id}>
          {place.days.map((days) => {
            const what = tell(days.open ? 'place-days.open' : 'place-days.closed', { days: daysWords(days, words), reason: days.reason });
            return (
              <li key={days.id} className={styles.head}>
                <span>{what}</span>
                <span className={styles.buttons}>
                  <Button size="compact-sm" variant="default" aria-label={tell('place-days.change-of', { what })} onClick={() => open({ kind: 'place-days', place: place.id, days: days.id })}>{tell('places.change')}</Button>
                  <Button size="compact-sm" variant="subtle" aria-label={tell('place-days.remove-of', { what })} onClick={() => void takeAway('place-days.remove', days.id, tell('place-days.removed'))}>{tell('places.remove')}</Button>
                </span>
              </li>
            );
          })}
        </ul>
      )}
    </li>
  );
}

function placeWords({ kind, assumed, openingMinor, minutesADay, minuteMinor, noticeDays, closedWeekdays, cars }: PlanningPlace, view: PlanningView, words: HouseholdWords): readonly string[] {
  return [
    tell(kind === 'home' ? 'places.home' : 'places.garage'),
    ...(assumed ? [tell('places.assumed')] : []),
    tell('places.opening', { amount: words.money(openingMinor) }),
    tell('places.minutes', { time: minutesWords(minutesADay) }),
    ...(minuteMinor > 0 ? [tell('places.price', { amount: words.money(minuteMinor) })] : []),
    ...(noticeDays > 0 ? [tell('places.notice', { n: noticeDays })] : []),
    ...(closedWeekdays.length > 0 ? [tell('places.closed', { days: weekdayNames(closedWeekdays) })] : []),
    ...(cars === null ? [] : [tell('places.cars', { cars: cars.map((id) => view.cars.find((one) => one.id === id)?.name ?? id).join(', ') })]),
  ];
}
