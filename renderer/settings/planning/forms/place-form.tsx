import { Checkbox, TextInput } from '@mantine/core';
import { amountText } from '../../../../shared-core/units/money.ts';
import type { PlanningPlace, PlanningView } from '../../../../shared-core/views/planning-view.ts';
import { change } from '../../../ui/change.ts';
import { bindText, bindTick } from '../../../ui/form/bind.ts';
import { EntryForm } from '../../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../../ui/form/fields.tsx';
import { useEntry } from '../../../ui/form/use-entry.ts';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';
import styles from '../planning.module.css';
import { WeekdaysField } from '../weekdays.tsx';
import { readPlace, startPlace } from './place-draft.ts';

interface PlaceFormProps {
  readonly view: PlanningView;
  /** The place to change, which may be one that is only assumed; null: a new garage. */
  readonly place: PlanningPlace | null;
  readonly onClose: () => void;
}

/** What a place asks and when it is open. */
export function PlaceForm({ view, place, onClose }: PlaceFormProps) {
  const { currency, cars } = view;
  const kind = place?.kind ?? 'garage';
  const entry = useEntry({
    key: `place.set ${place?.id ?? ''}`,
    start: startPlace(place, (minor) => amountText(minor, currency)),
    send: async (draft) => {
      const read = readPlace(draft, { id: place?.id ?? null, kind, currency });
      return read.ok ? change('place.set', read.value) : read;
    },
    onDone: (reply) => {
      note(tell('place-form.saved', { place: reply.place.name }), reply.undo);
      onClose();
    },
  });
  return (
    <EntryForm entry={entry} submit={tell('place-form.submit')} onCancel={onClose}>
      <TextInput {...bindText(entry, 'name')} label={tell('place-form.name')} autoComplete="off" data-autofocus />
      <FieldRow>
        <TextInput {...bindText(entry, 'openingMinor')} label={tell('place-form.opening')} description={tell(kind === 'home' ? 'place-form.opening-home' : 'place-form.opening-garage')} inputMode="decimal" autoComplete="off" />
        <TextInput {...bindText(entry, 'minuteMinor')} label={tell('place-form.price')} description={tell('place-form.price-what')} inputMode="decimal" autoComplete="off" />
      </FieldRow>
      <FieldRow>
        <TextInput {...bindText(entry, 'minutesADay')} label={tell('place-form.minutes')} inputMode="numeric" autoComplete="off" />
        <TextInput {...bindText(entry, 'noticeDays')} label={tell('place-form.notice')} description={tell('place-form.notice-what')} inputMode="numeric" autoComplete="off" />
      </FieldRow>
      <WeekdaysField legend={tell('place-form.closed')} place={entry.at('closedWeekdays')} value={entry.draft.closedWeekdays} onChange={(closedWeekdays) => entry.set({ closedWeekdays })} />
      <Checkbox {...bindTick(entry, 'everyCar')} label={tell('place-form.all-cars')} />
      {!entry.draft.everyCar && (
        <FieldGroup legend={tell('place-form.cars')} place={entry.at('cars')}>
          <div className={styles.ticks}>
            {cars.map((car) => (
              <Checkbox key={car.id} label={car.name} checked={entry.draft.cars.includes(car.id)} onChange={(event) => entry.set({ cars: event.currentTarget.checked ? [...entry.draft.cars, car.id] : entry.draft.cars.filter((one) => one !== car.id) })} />
            ))}
          </div>
        </FieldGroup>
      )}
    </EntryForm>
  );
}
