const order = new Intl.Collator('en', { numeric: true });

/**
 * The order of two names a person reads: letters without regard to case, numbers by their size.
 *
 * @example ['Wheel 10', 'wheel 2'].sort(compareNames) //=> ['wheel 2', 'Wheel 10']
 */
export function compareNames(a: string, b: string): number {
  return order.compare(a, b);
}
