import { TextInput } from '@mantine/core';
import type { CarView } from '../../../../shared-core/views/car-view.ts';
import { FieldGroup } from '../../../ui/form/fields.tsx';
import type { Entry } from '../../../ui/form/use-entry.ts';
import { useWords } from '../../../ui/household.tsx';
import { tell } from '../../../ui/words/tell.ts';
import { valueText } from '../value-words.ts';
import { filledSpots, spotsOfDraft, type MeasureDraft } from './measure-draft.ts';
import { edgesOf, type MeasureSpot } from './measure-spots.ts';
import styles from './wear-forms.module.css';

interface MeasureValuesProps {
  readonly entry: Entry<MeasureDraft>;
  readonly view: CarView;
}

/** A field for each place at which the kind is measured, as they lie on the car, with what was measured there last. */
export function MeasureValues({ entry, view }: MeasureValuesProps) {
  const { draft } = entry;
  const spots = spotsOfDraft(view, draft);
  const [here, stored] = [spots.filter((spot) => !spot.stored), spots.filter((spot) => spot.stored)];
  const filled = filledSpots(view, draft);
  const parts = filled.flatMap((_, at) => [`values.${at}.wheel`, `values.${at}.place`]);
  const grid = spots.length === 1 ? styles.one : draft.across && edgesOf(draft.what).length === 3 ? styles.three : styles.two;
  const field = (spot: MeasureSpot) => (
    <SpotField key={spot.key} entry={entry} spot={spot} at={filled.findIndex((one) => one.key === spot.key)} first={spot.key === spots[0]?.key} />
  );
  return (
    <FieldGroup legend={tell('measure-form.values')} place={entry.atGroup('values', ...parts)} {...(spots.length > 1 ? { hint: tell('measure-form.values-what') } : {})}>
      <div className={grid}>{here.map(field)}</div>
      {stored.length > 0 && (
        <details className={styles.stored}>
          <summary>{tell('measure-form.stored')}</summary>
          <div className={grid}>{stored.map(field)}</div>
        </details>
      )}
    </FieldGroup>
  );
}

interface SpotFieldProps {
  readonly entry: Entry<MeasureDraft>;
  readonly spot: MeasureSpot;
  /** Its place among what is sent; below 0 while it is empty. */
  readonly at: number;
  readonly first: boolean;
}

function SpotField({ entry, spot, at, first }: SpotFieldProps) {
  const words = useWords();
  const { values } = entry.draft;
  const place = entry.at(at < 0 ? `empty.${spot.key}` : `values.${at}.value`);
  return (
    <TextInput
      {...place}
      {...(first ? { 'data-autofocus': true } : {})}
      label={spot.label}
      {...(spot.last === null ? {} : { description: tell('measure-form.last', { value: valueText(spot.last.typed), date: words.date(spot.last.date) }) })}
      value={values[spot.key] ?? ''}
      onChange={(event) => entry.set({ values: { ...values, [spot.key]: event.currentTarget.value } })}
      inputMode="text"
      autoComplete="off"
    />
  );
}
