import { Checkbox, NativeSelect, TextInput } from '@mantine/core';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { bindText } from '../../ui/form/bind.ts';
import { choices } from '../../ui/form/choices.ts';
import { FieldGroup, FieldRow } from '../../ui/form/fields.tsx';
import type { Entry } from '../../ui/form/use-entry.ts';
import { tell } from '../../ui/words/tell.ts';
import { WayFields } from '../wear/forms/way-fields.tsx';
import styles from '../wear/forms/wear-forms.module.css';
import { hasPlaces, MEASURE_KINDS, type MeasureKind } from '../wear/subject-words.ts';
import { unitChoicesOf } from '../wear/value-words.ts';
import { measureKindChosen, type ItemMeasureDraft } from './item-measure-draft.ts';

interface ItemMeasureFieldsProps<Draft extends ItemMeasureDraft> {
  readonly entry: Entry<Draft>;
  readonly view: Pick<CarView, 'measured' | 'locale'>;
}

const CORNERS = ['front-left', 'front-right', 'rear-left', 'rear-right', 'spare'] as const;

/** What is measured of an item, where, and its limit. */
export function ItemMeasureFields<Draft extends ItemMeasureDraft>({ entry: wide, view }: ItemMeasureFieldsProps<Draft>) {
  // These fields are their own; the rest of the form is none of their business.
  const entry = wide as unknown as Entry<ItemMeasureDraft>;
  const { draft } = entry;
  const kind = draft.measureKind as MeasureKind | '';
  const units = kind === '' ? [] : unitChoicesOf(kind);
  return (
    <FieldGroup legend={tell('item-measure.legend')} hint={tell('item-measure.hint')} place={entry.atGroup('measure', 'measure.kind', 'measure.places')}>
      <FieldRow>
        <NativeSelect {...bindText(entry, 'measureKind', 'measure.kind')} label={tell('item-measure.what')} data={[{ value: '', label: tell('item-measure.nothing') }, ...choices('measured.', MEASURE_KINDS)]} onChange={(event) => entry.set(measureKindChosen(event.currentTarget.value, view))} />
        {kind === 'other' && <TextInput {...bindText(entry, 'measureName', 'measure.name')} label={tell('measure-form.name')} placeholder={tell('measure-form.name-example')} autoComplete="off" />}
      </FieldRow>
      {kind !== '' && (
        <FieldRow>
          <TextInput {...bindText(entry, 'measureLimit', 'measure.value')} label={tell('item-measure.limit')} autoComplete="off" />
          {units.length > 1 && <NativeSelect {...bindText(entry, 'measureUnit', 'measure.unit')} label={tell('measure-form.unit')} data={units} />}
        </FieldRow>
      )}
      {kind === 'other' && <WayFields by={bindText(entry, 'measureBy', 'measure.way')} rises={bindText(entry, 'measureRises', 'measure.way.rises')} />}
      {kind !== '' && hasPlaces(kind) && <MeasurePlaces entry={entry} />}
    </FieldGroup>
  );
}

function MeasurePlaces({ entry }: { readonly entry: Entry<ItemMeasureDraft> }) {
  const { measurePlaces } = entry.draft;
  return (
    <div role="group" aria-label={tell('item-measure.places')}>
      <p className={styles.hint}>{tell('item-measure.places')}</p>
      <div className={styles.places}>
        {CORNERS.filter((place) => place !== 'spare' || entry.draft.measureKind === 'tread').map((place) => (
          <Checkbox
            key={place}
            label={tell(`measured-place.${place}`)}
            checked={measurePlaces.includes(place)}
            onChange={(event) => entry.set({ measurePlaces: event.currentTarget.checked ? [...measurePlaces, place] : measurePlaces.filter((one) => one !== place) })}
          />
        ))}
      </div>
    </div>
  );
}
