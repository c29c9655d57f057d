import { isWordKey, tell } from './words/tell.ts';

/**
 * A quantity with its unit; without a unit it counts pieces.
 *
 * @example amountWords(5.6, 'litre') //=> '5.6 litres'
 * @example amountWords(1, null) //=> '1 piece'
 */
export function amountWords(quantity: number, unit: string | null): string {
  const key = `amount.${unit ?? 'each'}`;
  return isWordKey(key) ? tell(key, { n: quantity }) : `${quantity} ${unit ?? ''}`.trim();
}

/** What a pack holds: nothing is said of a single piece. @example packWords(1, 'each') //=> '' */
export function packWords(quantity: number, unit: string | null): string {
  return quantity === 1 && (unit === null || unit === 'each') ? '' : amountWords(quantity, unit);
}
