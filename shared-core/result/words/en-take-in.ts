/** What is said of a pack as it is taken in. */
export const TAKE_IN_WORDS: Readonly<Record<string, string>> = {
  'taken-in-other-currency': 'Its amounts are in {currency}, which is not this household’s currency: they are kept as they stand and count in none of your sums.',
  'taken-in-no-currency': 'It does not say in which currency its amounts are: they are kept as they stand and count in none of your sums.',
  'taken-in-prices-left': 'Prices asked for {count} items or duties are in another currency or in none that is named, and are read in the pack alone.',
};
