import type { CarView } from '../../../shared-core/views/car-view.ts';
import type { FieldsRead } from '../../ui/form/read-fields.ts';
import type { MeasureKind } from '../wear/subject-words.ts';
import { unitToStart, type MeasuredUnit } from '../wear/value-words.ts';

type Measure = NonNullable<CarView['items'][number]['item']['measure']>;

/** What is typed of the measurement that belongs to an item. */
export interface ItemMeasureDraft {
  /** Empty: nothing is measured of it. */
  readonly measureKind: string;
  readonly measureName: string;
  readonly measurePlaces: readonly Measure['places'][number][];
  readonly measureLimit: string;
  readonly measureUnit: string;
  readonly measureBy: string;
  readonly measureRises: string;
}

/** The fields as they open. */
export function itemMeasureDraft(measure: Measure | null): ItemMeasureDraft {
  return {
    measureKind: measure?.kind ?? '',
    measureName: measure?.name ?? '',
    measurePlaces: measure?.places ?? [],
    measureLimit: measure?.limit?.value.toString() ?? '',
    measureUnit: measure?.limit?.unit ?? '',
    measureBy: measure?.way?.by ?? 'distance',
    measureRises: measure?.way?.rises === true ? 'yes' : 'no',
  };
}

/** Another kind is chosen: its places and its unit follow. */
export function measureKindChosen(kind: string, view: Pick<CarView, 'measured' | 'locale'>): Partial<ItemMeasureDraft> {
  return { measureKind: kind, measurePlaces: [], measureUnit: kind === '' ? '' : unitToStart(kind as MeasureKind, view.measured, view.locale) };
}

/** Reads the fields as the measurement they describe; null where there is none. */
export function readItemMeasure(draft: ItemMeasureDraft, read: FieldsRead): Measure | null {
  if (draft.measureKind === '') return null;
  const other = draft.measureKind === 'other';
  return {
    kind: draft.measureKind as MeasureKind,
    name: other && draft.measureName.trim() !== '' ? draft.measureName : null,
    places: [...draft.measurePlaces],
    // Left empty, the limit set for all of its kind on the car counts.
    limit: draft.measureLimit.trim() === '' ? null : { value: read.number('measure.value', draft.measureLimit), unit: draft.measureUnit as MeasuredUnit },
    way: other ? { by: draft.measureBy as 'time', rises: draft.measureRises === 'yes' } : null,
  };
}
