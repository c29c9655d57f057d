import { hasWords, sayOf } from '../result/words/say.ts';

/**
 * A quantity with its unit as sentences say it; without a unit it counts pieces.
 *
 * @example amountSaid(5, 'litre') //=> '5 litres'
 * @example amountSaid(1, null) //=> '1 piece'
 */
export function amountSaid(quantity: number, unit: string | null): string {
  const key = `amount-${unit === null || unit === '' ? 'each' : unit}`;
  return hasWords(key) ? sayOf(key, { n: quantity }) : `${quantity} ${unit ?? ''}`;
}
