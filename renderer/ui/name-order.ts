/** Compares two names as people look for them: by the language of the page, and numbers in them by their size. */
export type NameOrder = (one: string, other: string) => number;

/**
 * The order of names in a language.
 *
 * @example ['10 seals', '2 seals'].sort(nameOrder('en-GB')) //=> ['2 seals', '10 seals']
 */
export function nameOrder(locale: string): NameOrder {
  return new Intl.Collator(locale, { numeric: true }).compare;
}

interface Ties<One> {
  /** Neighbours of which this says the same are a tie. */
  readonly tie: (one: One) => string;
  readonly name: (one: One) => string;
  readonly order: NameOrder;
}

/** A list whose order stays, but for neighbours that tie: they are put in the order of their names. */
export function tiesByName<One>(list: readonly One[], { tie, name, order }: Ties<One>): readonly One[] {
  const ties = list.map(tie);
  let run = 0;
  const placed = list.map((one, at) => ({ one, run: at > 0 && ties[at] !== ties[at - 1] ? (run += 1) : run }));
  return placed.sort((a, b) => a.run - b.run || order(name(a.one), name(b.one))).map(({ one }) => one);
}
