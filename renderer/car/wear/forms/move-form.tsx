import { Button, NativeSelect, TextInput } from '@mantine/core';
import type { Result } from '../../../../shared-core/result/result.ts';
import type { CarView } from '../../../../shared-core/views/car-view.ts';
import type { WheelView } from '../../../../shared-core/views/wheel-view.ts';
import { change, type Changed } from '../../../ui/change.ts';
import { bindDate, bindText } from '../../../ui/form/bind.ts';
import { DateField } from '../../../ui/form/date-field.tsx';
import { EntryForm } from '../../../ui/form/entry-form.tsx';
import { FieldGroup, FieldRow } from '../../../ui/form/fields.tsx';
import { FieldsRead } from '../../../ui/form/read-fields.ts';
import { useEntry } from '../../../ui/form/use-entry.ts';
import { useWords } from '../../../ui/household.tsx';
import { note } from '../../../ui/notices/notice-store.ts';
import { tell } from '../../../ui/words/tell.ts';
import { inPlace } from '../wheels-in-place.ts';
import { frontToRear, leftToRight, movedWheels, moveDraft, otherSet, placesNow, type MoveDraft } from './move-draft.ts';
import { wheelPlaces } from './place-choices.ts';
import styles from './wear-forms.module.css';

interface MoveFormProps {
  readonly view: CarView;
  readonly onClose: () => void;
}

/** Moves wheels on one day, all together: each is given its place, or all by one press. */
export function MoveForm({ view, onClose }: MoveFormProps) {
  const { car, today } = view;
  const wheels = inPlace(view.wheels, useWords().byName);
  const entry = useEntry({
    key: `wheel.move ${car.id}`,
    start: moveDraft(view),
    send: (draft) => send(draft, view),
    onDone: ({ moves, undo }) => {
      note(tell('move-form.done', { n: moves.length }), undo);
      onClose();
    },
  });
  const { places } = entry.draft;
  const other = otherSet(wheels);
  return (
    <EntryForm entry={entry} submit={tell('move-form.submit')} onCancel={onClose}>
      <div role="group" aria-label={tell('move-form.quick')} className={styles.quick}>
        <Button data-autofocus size="compact-md" variant="default" onClick={() => entry.set({ places: frontToRear(placesNow(wheels)) })}>{tell('move-form.swap')}</Button>
        <Button size="compact-md" variant="default" onClick={() => entry.set({ places: leftToRight(placesNow(wheels)) })}>{tell('move-form.swap-sides')}</Button>
        {other !== null && <Button size="compact-md" variant="default" onClick={() => entry.set({ places: other })}>{tell('move-form.other-set')}</Button>}
        <Button size="compact-md" variant="subtle" onClick={() => entry.set({ places: placesNow(wheels) })}>{tell('move-form.as-now')}</Button>
      </div>
      <FieldGroup legend={tell('move-form.where')} place={entry.atGroup('moves')}>
        <div className={styles.two}>
          {wheels.map((one) => <WheelPlace key={one.wheel.id} one={one} id={entry.at(`places.${one.wheel.id}`).id} value={places[one.wheel.id] ?? one.place} onChange={(place) => entry.set({ places: { ...places, [one.wheel.id]: place } })} />)}
        </div>
      </FieldGroup>
      <FieldRow>
        <DateField {...bindDate(entry, 'on')} max={today} label={tell('move-form.on')} description={tell('measure-form.date-what')} />
        <TextInput {...bindText(entry, 'reading')} label={tell('measure-form.reading', { unit: tell(`unit.${car.unit}`) })} description={tell('measure-form.reading-what')} inputMode="numeric" autoComplete="off" />
      </FieldRow>
    </EntryForm>
  );
}

interface WheelPlaceProps {
  readonly one: WheelView;
  readonly id: string;
  readonly value: WheelView['place'];
  readonly onChange: (place: WheelView['place']) => void;
}

function WheelPlace({ one, id, value, onChange }: WheelPlaceProps) {
  const moved = value !== one.place;
  return (
    <NativeSelect id={id} label={one.wheel.name} description={moved ? tell('move-form.now', { place: tell(`measured-place.${one.place}`) }) : ' '} data={wheelPlaces()} value={value} onChange={(event) => onChange(event.currentTarget.value as WheelView['place'])} />
  );
}

async function send(draft: MoveDraft, { wheels, car }: CarView): Promise<Result<Changed<'wheel.move'>>> {
  const read = new FieldsRead();
  const moves = movedWheels(wheels, draft.places);
  if (moves.length === 0) read.refuse('moves', 'nothing-moved');
  const whole = read.whole({ car: car.id, moves, on: read.date('on', draft.on), reading: read.distanceOrNull('reading', draft.reading, car.unit) });
  if (!whole.ok) return whole;
  const result = await change('wheel.move', whole.value);
  // A refused reading names its own field, which stands here under another name.
  if (!result.ok && result.refusal.path?.[0] === 'value') return { ok: false, refusal: { ...result.refusal, path: ['reading'] } };
  return result;
}
