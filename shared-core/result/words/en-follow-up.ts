/** What the program says of what is to be looked at again after a work. */
export const FOLLOW_UP_WORDS: Readonly<Record<string, string>> = {
  'unknown-follow-up': 'There is no such follow-up. Look at what stands, and choose one of it.',
  'follow-up-two-days': 'Say after how many days, or give the day itself; not both.',
  'follow-up-before-work': '{on} is before {made}, the day from which it counts. Check both dates.',
  'follow-up-no-distance': 'A distance after which to look again must be above 0. Without one, give a day.',
  'follow-up-done': '"{text}" is ticked already, on {on}. Undo that first, if it was not so.',
};
