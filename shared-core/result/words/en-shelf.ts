/** Sentences about what is needed, what stands on the shelf, and sums too large to be true. */
export const SHELF_WORDS: Readonly<Record<string, string>> = {
  'need-twice': 'The specification {specification} is needed twice for one task. Name it once, with all that is needed of it.',

  'offer-too-large': 'The offer {offer} is too large to be reckoned exactly. Check its price and its cheaper steps for a slip of the keyboard, or withdraw it.',
  'offer-sum-too-large': 'The price of {packs} packs would come to more than can be true. Check it for a slip of the keyboard.',
  'pack-holds-too-much': 'A pack would hold more than can be true. Check its quantity for a slip of the keyboard.',
  'order-sum-too-large': 'The order would come to more than can be true. Check packs and prices for a slip of the keyboard.',
  'line-brings-too-much': 'That line would bring more than can be true. Check its packs and what is in one for a slip of the keyboard.',

  'opened-before-received': 'It would have been opened on {date}, before it came on {received}. Check the two days.',
  'kit-is-no-lot': '{part} is a kit, and a kit stands on the shelf as the parts in it. Enter each of them.',
  'counted-whole': '{part} is counted in whole ones. Give a whole number.',
  'lot-of-its-part': 'Something of this lot was used or counted already, so it stays {part}. Enter the other as a lot of its own.',
  'used-before-received': 'Something of it was used or counted on {date}, before {received}. Check when it came.',
  'less-than-used': '{used} of it was used already. Give at least that much, or correct what was used.',
  'unit-in-use': '{user} is counted in the unit {unit} of this specification. Make another specification for another unit.',
  'meets-two-units': '{part} would be counted in two units, {a} and {b}. Take one of the specifications out.',
  'break-beyond-most': 'A price from {packs} packs on cannot be reached: no more than {most} can be had. Check the two.',
  'break-dearer': 'The price from {packs} packs on is higher than the one before it. Check the prices of the steps.',
  'supplier-named-already': 'A supplier is called {supplier} already. Change that one.',
};
