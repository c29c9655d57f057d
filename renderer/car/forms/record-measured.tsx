import { Button, Checkbox, CloseButton, NativeSelect, TextInput } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { choices } from '../../ui/form/choices.ts';
import { FieldGroup } from '../../ui/form/fields.tsx';
import type { FieldPlace } from '../../ui/form/use-entry.ts';
import { tell } from '../../ui/words/tell.ts';
import { hasPlaces, MEASURE_KINDS, type MeasureKind } from '../wear/subject-words.ts';
import { unitChoicesOf, unitToStart } from '../wear/value-words.ts';
import styles from './forms.module.css';
import type { MeasuredDraft } from './record-draft.ts';
import { placeChoices } from '../wear/forms/place-choices.ts';

interface RecordMeasuredProps {
  readonly view: CarView;
  readonly measured: readonly MeasuredDraft[];
  readonly place: (path: string) => FieldPlace;
  readonly group: FieldPlace;
  readonly onChange: (measured: readonly MeasuredDraft[]) => void;
}

/** What was measured in the course of the work; it stands with the wear of the car. */
export function RecordMeasured({ view, measured, place, group, onChange }: RecordMeasuredProps) {
  const replace = (at: number, change: Partial<MeasuredDraft>) => onChange(measured.map((one, index) => (index === at ? { ...one, ...change } : one)));
  const begin = (what: MeasureKind) => ({ what, unit: unitToStart(what, view.measured, view.locale), name: '', place: '' });
  return (
    <FieldGroup legend={tell('record-form.measured')} place={group}>
      {measured.map((one, at) => (
        <div key={at} className={styles.measured}>
          <NativeSelect label={tell('measure-form.what')} autoFocus value={one.what} onChange={(event) => replace(at, begin(event.currentTarget.value as MeasureKind))} data={choices('measured.', MEASURE_KINDS)} />
          {one.what === 'other' && <TextInput {...place(`measured.${at}.name`)} label={tell('measure-form.name')} value={one.name} autoComplete="off" onChange={(event) => replace(at, { name: event.currentTarget.value })} />}
          {(hasPlaces(one.what) || one.what === 'other') && <NativeSelect {...place(`measured.${at}.place`)} label={tell('measure-form.place')} value={one.place} onChange={(event) => replace(at, { place: event.currentTarget.value })} data={placeChoices()} />}
          <TextInput {...place(`measured.${at}.value`)} label={tell('record-form.measured-value')} value={one.value} inputMode="decimal" autoComplete="off" onChange={(event) => replace(at, { value: event.currentTarget.value })} />
          <NativeSelect label={tell('measure-form.unit')} value={one.unit} onChange={(event) => replace(at, { unit: event.currentTarget.value })} data={unitChoicesOf(one.what)} />
          <Checkbox label={tell('record-form.measured-fresh')} checked={one.fresh} onChange={(event) => replace(at, { fresh: event.currentTarget.checked })} />
          <CloseButton size="lg" aria-label={tell('record-form.remove-measured', { n: at + 1 })} onClick={() => onChange(measured.filter((_, index) => index !== at))} />
        </div>
      ))}
      <Button className={styles.add ?? ''} variant="default" size="compact-md" onClick={() => onChange([...measured, { ...begin('tread'), value: '', fresh: false }])}>{tell('record-form.add-measured')}</Button>
    </FieldGroup>
  );
}
