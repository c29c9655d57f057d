/** Decimals a quantity may be written with: a millionth of a litre is finer than any can. */
export const MOST_DECIMALS = 6;
/** The largest quantity taken. */
export const LARGEST_QUANTITY = 1_000_000;

/**
 * How many decimals a number is written with; null where more than allowed are needed.
 *
 * @example decimalsOf(4.25, 6) //=> 2
 * @example decimalsOf(1 / 3, 6) //=> null
 */
export function decimalsOf(value: number, most: number): number | null {
  for (let decimals = 0; decimals <= most; decimals += 1) {
    if (fromUnits(toUnits(value, decimals), decimals) === value) return decimals;
  }
  return null;
}

/** A quantity as a whole number of units of its last decimal. @example toUnits(4.3, 1) //=> 43 */
export function toUnits(value: number, decimals: number): number {
  return Math.round(value * 10 ** decimals);
}

/** The quantity of whole units; the division is rounded correctly, so the decimal number comes back as it was. @example fromUnits(43, 1) //=> 4.3 */
export function fromUnits(units: number, decimals: number): number {
  return units / 10 ** decimals;
}

/** The greatest whole number that divides all; 0 where all are 0. @example greatestDivisor([50, 40, 15]) //=> 5 */
export function greatestDivisor(values: readonly number[]): number {
  return values.reduce((a, b) => {
    let [x, y] = [Math.abs(a), Math.abs(b)];
    while (y > 0) [x, y] = [y, x % y];
    return x;
  }, 0);
}
