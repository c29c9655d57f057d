/** Sentences about what is needed, what stands on the shelf, and sums too large to be true. */
export const SHELF_WORDS: Readonly<Record<string, string>> = {
  'need-twice': 'The specification {specification} is needed twice for one task. Name it once, with all that is needed of it.',

  'offer-too-large': 'The offer {offer} is too large to be reckoned exactly. Check its price and its cheaper steps for a slip of the keyboard, or withdraw it.',
  'offer-sum-too-large': 'The price of {packs} packs would come to more than can be true. Check it for a slip of the keyboard.',
  'pack-holds-too-much': 'A pack would hold more than can be true. Check its quantity for a slip of the keyboard.',
  'order-sum-too-large': 'The order would come to more than can be true. Check packs and prices for a slip of the keyboard.',
  'line-brings-too-much': 'That line would bring more than can be true. Check its packs and what is in one for a slip of the keyboard.',
};
