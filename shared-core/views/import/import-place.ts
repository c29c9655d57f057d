/** Where work was done, and by whom, as a record has it. */
export interface MeantPlace {
  readonly place: 'home' | 'garage';
  readonly placeName: string | null;
  readonly by: string | null;
}

const HOME = /^(at )?(home|own place|self|my ?self|me|own work|diy|driveway|house)$/i;
const GARAGE = /^(at )?(a |the )?(garage|workshop|dealer)$/i;
const WORKS_FOR_MONEY = /\b(garage|workshop|dealer|motors?|service|services|centre|center|ltd|gmbh)\b/i;

/**
 * Where work was done by what a table says: a name that is not one's own place is that of a garage. Where nothing is said of the
 * place, whoever did it may be a garage by the name.
 *
 * Source: ours, no source.
 * @example meantPlace('Hill Road', '') //=> { place: 'garage', placeName: 'Hill Road', by: null }
 */
export function meantPlace(place: string, by: string): MeantPlace {
  const who = by === '' ? null : by;
  if (place === '') return who !== null && WORKS_FOR_MONEY.test(who) ? { place: 'garage', placeName: who, by: who } : { place: 'home', placeName: null, by: who };
  if (HOME.test(place)) return { place: 'home', placeName: null, by: who };
  return { place: 'garage', placeName: GARAGE.test(place) ? null : place, by: who };
}
