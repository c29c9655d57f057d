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
  const spots = spotsOfDraft(view, entry.draft);
  const [here, stored] = [spots.filter((spot) => !spot.stored), spots.filter((spot) => spot.stored)];
  const parts = filledSpots(view, entry.draft).flatMap((_, at) => [`values.${at}.wheel`, `values.${at}.place`]);
  return (
    <FieldGroup legend={tell('measure-form.values')} place={entry.atGroup('values', ...parts)} {...(spots.length > 1 ? { hint: tell('measure-form.values-what') } : {})}>
      <SpotFields entry={entry} view={view} spots={here} />
      {stored.length > 0 && (
        <details className={styles.stored}>
          <summary>{tell('measure-form.stored')}</summary>
          <SpotFields entry={entry} view={view} spots={stored} />
        </details>
      )}
    </FieldGroup>
  );
}

interface SpotFieldsProps extends MeasureValuesProps {
  readonly spots: readonly MeasureSpot[];
}

/** Places two by two; where each is measured in several parts, one row a place. */
function SpotFields({ entry, view, spots }: SpotFieldsProps) {
  const words = useWords();
  const filled = filledSpots(view, entry.draft);
  const field = (spot: MeasureSpot, label: string) => <SpotField key={spot.key} entry={entry} spot={spot} label={label} at={filled.findIndex((one) => one.key === spot.key)} />;
  if (!entry.draft.across) return <div className={spots.length === 1 ? styles.one : styles.two}>{spots.map((spot) => field(spot, spot.label))}</div>;
  return [...new Set(spots.map((spot) => spot.label))].map((label) => {
    const parts = spots.filter((spot) => spot.label === label);
    const last = parts[0]?.last ?? null;
    return (
      <div key={label} role="group" aria-label={label} className={styles.across}>
        <p>{label} {last !== null && <span className={styles.last}>{tell('measure-form.last', { value: valueText(last.typed), date: words.date(last.date) })}</span>}</p>
        <div className={edgesOf(entry.draft.what).length === 3 ? styles.three : styles.two}>{parts.map((spot) => field(spot, spot.edge))}</div>
      </div>
    );
  });
}

interface SpotFieldProps {
  readonly entry: Entry<MeasureDraft>;
  readonly spot: MeasureSpot;
  readonly label: string;
  /** Its place among what is sent; below 0 while it is empty. */
  readonly at: number;
}

function SpotField({ entry, spot, label, at }: SpotFieldProps) {
  const words = useWords();
  const { values } = entry.draft;
  const place = entry.at(at < 0 ? `empty.${spot.key}` : `values.${at}.value`);
  const last = spot.edge === '' && spot.last !== null ? { description: tell('measure-form.last', { value: valueText(spot.last.typed), date: words.date(spot.last.date) }) } : {};
  return (
    <TextInput
      {...place}
      {...last}
      {...(spot.first ? { 'data-autofocus': true } : {})}
      label={label}
      value={values[spot.key] ?? ''}
      onChange={(event) => entry.set({ values: { ...values, [spot.key]: event.currentTarget.value } })}
      autoComplete="off"
    />
  );
}
