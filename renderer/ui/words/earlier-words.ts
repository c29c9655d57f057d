/** Words of what came with the pack of an earlier keeper. */
export const EARLIER_WORDS = {
  'earlier.keeper': 'earlier keeper',
  'earlier.whose': 'Written by',
  'earlier.withheld': 'withheld by the earlier keeper: {fields}',
  'earlier.withheld-label': 'Withheld by the earlier keeper',
  'earlier.element-withheld': 'withheld by the earlier keeper',
  'earlier.kept': 'This was written by an earlier keeper and is kept as it was. Write a record of your own beside it.',
  'earlier.no-currency': '{n} in smallest units, currency not named',
} as const;
