/** Sentences about what is needed, what stands on the shelf, and sums too large to be true. */
export const SHELF_WORDS: Readonly<Record<string, string>> = {
  'need-twice': 'The specification {specification} is needed twice for one task. Name it once, with all that is needed of it.',
};
