import type { CarView } from '../../../shared-core/views/car-view.ts';

type Unit = CarView['car']['unit'];

/**
 * The unit that a car's odometer showed on a date; a date that is none yet counts as the latest.
 *
 * @example unitOn([{ from: null, unit: 'mi' }, { from: '2024-05-01', unit: 'km' }], '2024-04-30') //=> 'mi'
 */
export function unitOn(units: CarView['units'], date: string): Unit {
  const isDate = /^\d{4}-\d{2}-\d{2}$/.test(date);
  return units.findLast(({ from }) => from === null || !isDate || from <= date)?.unit ?? 'km';
}

/** The unit a reading is in: as chosen, or the one shown on its day. */
export function unitOfDraft({ unit, date }: { readonly unit: string; readonly date: string }, { units }: Pick<CarView, 'units'>): Unit {
  return unit === '' ? unitOn(units, date) : (unit as Unit);
}

/** The unit of what the old instrument last showed: as chosen, or the one shown on the days before. */
export function unitOfLast({ lastUnit, date }: { readonly lastUnit: string; readonly date: string }, { units }: Pick<CarView, 'units'>): Unit {
  const before = units.filter(({ from }) => from === null || from < date);
  return lastUnit === '' ? unitOn(before, date) : (lastUnit as Unit);
}
