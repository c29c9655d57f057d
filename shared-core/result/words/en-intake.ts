/** What is asked and advised of a car just bought. */
export const INTAKE_WORDS: Readonly<Record<string, string>> = {
  'intake-waits': 'Last done {since}; it is not likely due before {date}.',
  'intake-waits-from': 'It is not likely due before {date}.',
  'intake-waits-long': 'It does not fall due within five years as the car is used now.',
  'intake-not-yet': 'Nobody knows whether it was ever done, but it cannot be due before {date}.',
  'intake-said-look': 'Said to be done on {since}, without a paper: a look shows whether it can be so.',
  'intake-said-waits': 'Said to be done on {since}, without a paper; it harms nothing to take that as true until {date}.',
  'intake-measured': 'It was {value} {unit} when it was measured on {on}: look again by {date}.',
  'intake-look-safety': 'Nobody knows when it was last looked at, and people can come to harm: look before longer drives.',
  'intake-look-damage': 'Nobody knows when it was last looked at. A look costs little beside the damage it can spare.',
  'intake-look-comfort': 'Nobody knows when it was last looked at. A look settles it.',
  'intake-replace-safety': 'Nobody knows when it was last done, and people can come to harm. Done now, it is counted from firm ground.',
  'intake-replace-damage': 'Nobody knows when it was last done, and waiting can do damage. Done now, it is counted from firm ground.',
  'intake-replace-comfort': 'Nobody knows when it was last done, but only comfort suffers. It may wait for a session, or count it from the purchase.',

  'intake-no-reading': 'Enter what the odometer shows: without it nothing is counted by distance.',
  'intake-no-registration': 'Enter when the car was first registered: it says what cannot be due yet.',
  'intake-no-purchase': 'Enter the day you bought it: what nobody knows can then be counted from the purchase.',
  'intake-no-items': 'Start from a set of items for this kind of car.',
  'intake-no-obligations': 'Enter its roadworthiness test, tax and insurance.',

  'answer-needs-date': 'What was done needs the day on which it was done. Where nobody knows that day, answer that it is unknown.',
  'answer-takes-no-date': 'A day, a reading and papers belong to what was done. Answer that it is proven or said, or take them out.',
  'proven-needs-paper': 'What is proven needs its paper. Keep the paper first, or answer that it is only said.',
  'said-has-paper': 'With a paper it is proven. Answer so, or take the paper out.',
  'purchase-not-known': 'To count from the purchase, enter the day you bought {car} first: since when it has been kept.',
  'reading-given-before': 'That work has its reading already. Take the reading out, or settle it under readings.',
};
