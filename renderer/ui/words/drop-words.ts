/** Where files may be dropped. */
export const DROP_WORDS = {
  'drop.one': 'Or drop it here.',
  'drop.many': 'Or drop them here.',
  'drop.let-go': 'Let go to choose it.',
  'drop.only-one': 'Only one file goes here. Drop one.',
} as const;
