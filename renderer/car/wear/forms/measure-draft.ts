import type { RequestOf } from '../../../../shared-core/contract/contract.ts';
import type { Result } from '../../../../shared-core/result/result.ts';
import type { CarView } from '../../../../shared-core/views/car-view.ts';
import { FieldsRead, textOrNull } from '../../../ui/form/read-fields.ts';
import type { MeasureKind } from '../subject-words.ts';
import { unitToStart, type MeasuredUnit } from '../value-words.ts';
import { spotsOf, type MeasureSpot } from './measure-spots.ts';

/** What is typed into the form of measurements. */
export interface MeasureDraft {
  readonly what: MeasureKind;
  readonly name: string;
  readonly unit: string;
  readonly date: string;
  readonly reading: string;
  /** Measured in several parts of one thing. */
  readonly across: boolean;
  /** What was typed, by the key of its place. */
  readonly values: Readonly<Record<string, string>>;
  /** Of something else: where it is. */
  readonly place: string;
  readonly fresh: boolean;
  readonly source: string;
  readonly gauge: string;
}

/** The form as it opens: today, in the unit that was read last. */
export function measureDraft(view: CarView, what: MeasureKind, name: string | null): MeasureDraft {
  return {
    what, name: name ?? '', unit: unitToStart(what, view.measured, view.locale), date: view.today, reading: '', across: false, values: {},
    place: what === 'other' ? (view.measured.find((one) => one.what === what && one.name === name)?.place ?? '') : '', fresh: false, source: 'keeper', gauge: '',
  };
}

/** The places of the form as it stands. */
export function spotsOfDraft(view: CarView, { what, name, across }: MeasureDraft): readonly MeasureSpot[] {
  return spotsOf(view, what, what === 'other' ? name : null, across);
}

/** The places in which something was typed: they are what is sent, in this order. */
export function filledSpots(view: CarView, draft: MeasureDraft): readonly MeasureSpot[] {
  return spotsOfDraft(view, draft).filter((spot) => (draft.values[spot.key] ?? '').trim() !== '');
}

type MeasureRequest = RequestOf<'measurements.add'>;

/** Reads the form's fields as the measurements they describe. */
export function composeMeasurements(draft: MeasureDraft, view: CarView): Result<MeasureRequest> {
  const read = new FieldsRead();
  const { what, unit, fresh } = draft;
  const values = filledSpots(view, draft).map((spot, at) => ({
    value: read.number(`values.${at}.value`, draft.values[spot.key] ?? ''),
    wheel: spot.wheel,
    // A wheel knows itself where it was on a day that is long past.
    place: spot.wheel !== null ? null : what === 'other' && draft.place !== '' ? (draft.place as MeasureSpot['place']) : spot.place,
    note: spot.edge,
    fresh,
  }));
  if (values.length === 0) read.refuse('values', 'nothing-measured');
  return read.whole({
    car: view.car.id, what, name: what === 'other' ? textOrNull(draft.name) : null, unit: unit as MeasuredUnit, date: read.date('date', draft.date),
    reading: read.distanceOrNull('reading', draft.reading, view.car.unit), source: draft.source as 'keeper', gauge: textOrNull(draft.gauge), values,
  });
}
