import type { WearSeriesView } from '../../../shared-core/views/wear-view.ts';
import { tell, type WordKey } from '../../ui/words/tell.ts';
import type { Choice } from '../../ui/household-choices.ts';
import type { MeasureKind } from './subject-words.ts';

export type MeasuredUnit = WearSeriesView['unit'];
export type TypedValue = WearSeriesView['limits'][number]['limit'];

/** A value as it was read. @example valueText({ value: 2, unit: '32nds' }) //=> '2/32 in' */
export function valueText({ value, unit }: TypedValue): string {
  // A minus sign is as wide as a plus; a hyphen is not.
  return tell(`value.${unit}`, { value: String(value).replace('-', '−') });
}

const DEPTHS: readonly MeasuredUnit[] = ['mm', 'in'];
const UNITS: Readonly<Record<MeasureKind, readonly MeasuredUnit[]>> = {
  tread: ['mm', '32nds', 'in'], pad: DEPTHS, disc: DEPTHS, 'battery-voltage': ['V'], 'battery-capacity': ['%'], 'brake-fluid-moisture': ['%'], 'coolant-protection': ['C', 'F'], belt: ['grade'],
  other: ['mm', 'in', 'V', '%', 'C', 'F', 'grade', '1'],
};

/** The units in which a kind is read. */
export function unitsOf(what: MeasureKind): readonly MeasuredUnit[] {
  return UNITS[what];
}

/** Units as choices. */
export function unitChoicesOf(what: MeasureKind): Choice[] {
  return unitsOf(what).map((unit) => ({ value: unit, label: tell(`measured-unit.${unit}` satisfies WordKey) }));
}

/** The unit a form opens with: the one read last, else the one usual where the household is. */
export function unitToStart(what: MeasureKind, measured: readonly WearSeriesView[], locale: string): MeasuredUnit {
  const read = measured.filter((one) => one.what === what).flatMap((one) => one.points.map(({ measurement }) => measurement)).sort((a, b) => (a.date < b.date ? -1 : 1)).at(-1);
  if (read !== undefined) return read.typed.unit;
  const american: Partial<Record<MeasureKind, MeasuredUnit>> = locale === 'en-US' ? { tread: '32nds', 'coolant-protection': 'F' } : {};
  return american[what] ?? unitsOf(what)[0] ?? '1';
}
