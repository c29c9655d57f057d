import type { CarView } from '../../shared-core/views/car-view.ts';
import type { HouseholdWords } from '../ui/household-words.ts';
import { tell } from '../ui/words/tell.ts';

type Item = CarView['items'][number]['item'];
type Limit = Item['interval']['first'];

/** An interval in words. @example intervalWords({ first, repeat: { months: 12, distance: null } }, words) //=> 'every 12 months' */
export function intervalWords({ first, repeat }: Item['interval'], words: HouseholdWords): string {
  const [one, other] = [limitWords(first, words), limitWords(repeat, words)];
  return one === other ? other : tell('interval.first', { repeat: other, first: one });
}

function limitWords({ months, distance }: Limit, words: HouseholdWords): string {
  const far = distance === null ? '' : words.distance(distance.value, distance.unit);
  if (months === null && distance === null) return tell('interval.once');
  if (months === null) return tell('interval.distance', { distance: far });
  return distance === null ? tell('interval.months', { n: months }) : tell('interval.both', { n: months, distance: far });
}
