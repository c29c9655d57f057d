import { sayNumber } from '../../shared-core/result/words/say.ts';
import type { CarDue } from '../../shared-core/views/due-view.ts';
import { tell } from './words/tell.ts';

/**
 * What an odometer shows by now: a band, or one value where it is known to the last digit.
 *
 * @example odometerWords({ low: 38250, likely: 38400, high: 38570, unit: 'mi' }) //=> '38 250 to 38 570 mi'
 */
export function odometerWords(odometer: CarDue['odometer']): string | null {
  if (odometer === null) return null;
  const { low, high, unit } = odometer;
  const said = { low: sayNumber(low), high: sayNumber(high), unit: tell(`unit.${unit}`) };
  return tell(low === high ? 'odometer.one' : 'odometer.band', said);
}
