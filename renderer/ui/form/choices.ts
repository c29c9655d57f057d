import type { Choice } from '../household-choices.ts';
import { tell, type WordKey } from '../words/tell.ts';

/** Choices of a list whose words stand under a common beginning. @example choices('power.', ['petrol', 'diesel'])[0]?.label //=> 'petrol' */
export function choices<Prefix extends string, Value extends string>(prefix: Prefix, values: readonly (`${Prefix}${Value}` extends WordKey ? Value : never)[]): Choice[] {
  return values.map((value) => ({ value, label: tell(`${prefix}${value}` as WordKey) }));
}
