/** What is said of starting sets that are refused. */
export const SET_WORDS: Readonly<Record<string, string>> = {
  'set-for-other-power': 'The set is for a {set} car, and this one is said to be {power}. Choose the set for it, or say what else drives it.',
  'unknown-set': 'There is no such starting set. There are petrol, diesel, hybrid, electric, before-1980 and camper.',
  'set-not-known': 'What drives {car} does not say which starting set fits it. Choose one.',
  'not-in-set': 'The set "{set}" has no item {item} to leave out.',
  'not-printed': 'No date is asked for that is printed on {item}.',
  'nothing-to-start': 'The car has everything of the set "{set}" that was not left out.',
};
