import type { CarView } from '../../../shared-core/views/car-view.ts';
import type { FieldsRead } from '../../ui/form/read-fields.ts';

type Interval = CarView['items'][number]['item']['interval'];
type Unit = CarView['car']['unit'];

/** What is typed as an interval. */
export interface IntervalDraft {
  readonly months: string;
  readonly distance: string;
  readonly unit: string;
  readonly firstDiffers: boolean;
  readonly firstMonths: string;
  readonly firstDistance: string;
}

/** The fields of an interval as it stands, or empty ones in a car's unit. */
export function intervalDraft(interval: Interval | null, unit: Unit): IntervalDraft {
  const { first, repeat } = interval ?? { first: null, repeat: null };
  return {
    months: repeat?.months?.toString() ?? '',
    distance: repeat?.distance?.value.toString() ?? '',
    unit: repeat?.distance?.unit ?? first?.distance?.unit ?? unit,
    firstDiffers: JSON.stringify(first) !== JSON.stringify(repeat),
    firstMonths: first?.months?.toString() ?? '',
    firstDistance: first?.distance?.value.toString() ?? '',
  };
}

/** Reads the fields as the interval they describe; the first is the same as the later ones unless it was said to differ. */
export function readInterval(draft: IntervalDraft, read: FieldsRead): Interval {
  const unit = draft.unit as Unit;
  const repeat = { months: read.wholeOrNull('interval.repeat.months', draft.months), distance: read.distanceOrNull('interval.repeat.distance', draft.distance, unit) };
  if (!draft.firstDiffers) return { first: repeat, repeat };
  return { first: { months: read.wholeOrNull('interval.first.months', draft.firstMonths), distance: read.distanceOrNull('interval.first.distance', draft.firstDistance, unit) }, repeat };
}
