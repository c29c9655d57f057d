/** Source: house method, FORECAST section 6, step 3. */
const MOST_KM_A_DAY = 1500;

/**
 * Whether a car can have been driven so far in so many days, km; the same day counts as one. Falls are not looked at.
 *
 * @example drivableIn(0, 1501) //=> false
 */
export function drivableIn(days: number, km: number): boolean {
  return km <= MOST_KM_A_DAY * Math.max(1, days);
}
