/**
 * A quantity with its unit as sentences say it; without a unit it counts pieces.
 *
 * @example amountSaid(5, 'litre') //=> '5 litres'
 * @example amountSaid(1, null) //=> '1 piece'
 */
export function amountSaid(quantity: number, unit: string | null): string {
  const name = unit === null || unit === 'each' || unit === '' ? 'piece' : unit;
  return `${quantity} ${name}${quantity === 1 ? '' : 's'}`;
}
