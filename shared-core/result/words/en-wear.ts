/** What is said of measured wear. */
export const WEAR_WORDS: Readonly<Record<string, string>> = {
  'reason-wear': 'Wear comes first: {subject}, was {value} {valueUnit} on {on}, wears by {rate} {rateUnit} every {per}, and {limit} {limitUnit} is its limit.',
  'reason-wear-alone': '{subject}: was {value} {valueUnit} on {on}, wears by {rate} {rateUnit} every {per}, and {limit} {limitUnit} is its limit. Its interval does not count yet, for nobody knows from when.',
  'reason-worn-out': '{subject}: was {value} {valueUnit} on {on}, past its limit of {limit} {limitUnit}.',

  'wear-none': 'No measurement of the part that is in now. Measure it.',
  'wear-too-few': 'Measured once: it takes two, with wear between them. Measure again later.',
  'wear-contradictory': 'It got better, which wear does not do: {from} {unit} on {fromDate}, then {to} {unit} on {toDate}. Was it replaced? Then mark the later one as the first of a new part. Else correct the one that is wrong.',
  'wear-past-limit': 'Past its limit of {limit} {limitUnit}: {value} {valueUnit} on {on}.',
  'wear-wears': 'It wears by {rate} {rateUnit} every {per} towards its limit of {limit} {limitUnit}.',
  'wear-far': 'It wears by {rate} {rateUnit} every {per} and does not reach {limit} {limitUnit} within five years.',
  'wear-flat': 'No wear to be seen beyond what gauges differ. Measure again later.',
  'wear-off-the-road': 'It is off the road and does not wear there, so nobody can say when it reaches its limit.',
  'wear-no-reading': 'It wears with distance, and there is no reading yet. Enter one.',

  'tread-1.6-mm': '1.6 mm (United Kingdom, European Union)',
  'tread-2-32-in': '2/32 in (United States)',
};

/** Why a measurement, a limit or a wheel was not taken. */
export const WEAR_REFUSALS: Readonly<Record<string, string>> = {
  'unknown-measure': 'The field {field} does not name anything that is measured here. Choose one, or "other" with a name.',
  'unknown-measured-unit': 'The unit in {field} must be mm, in, 32nds, V, %, C, F, grade or 1.',
  'unknown-measure-place': 'The place in {field} must be a corner, an axle or the spare.',
  'unknown-wheel-place': 'A wheel is at a corner, is the spare, or is off.',
  'not-a-measured-value': 'That is not a value that can be measured. Give a number.',
  'nothing-measured': 'Nothing is measured yet. Give one value at least.',
  'measured-value-absurd': '{value} {unit} cannot be right for {what}. Check the value and its unit.',
  'measure-unit-differs': '{unit} is not a unit in which {what} is measured here.',
  'measure-needs-name': 'Say what is measured: give it a name.',
  'measure-has-name': 'What is called {what} needs no other name. Leave the name out, or choose "other".',
  'measure-needs-way': 'Say whether it wears with distance or with time, and whether its value rises or falls.',
  'measure-way-known': 'How {what} wears is known here. Leave that out.',
  'two-odometers': 'Give the odometer in one way only: a new reading, one entered before, or the whole distance.',
  'distance-does-not-fit': '{value} {unit} on {date} does not fit the readings before and after. Check the distance and the date.',
  'reading-of-another-day': 'That reading is of {read}, not of {date}.',
  'unknown-measurement': 'There is no such measurement.',
  'only-tread-has-wheel': 'Only tread belongs to a wheel. Give a place instead.',
  'wheel-and-place': 'Give the wheel or the place, not both.',
  'wheel-elsewhere': 'On {date} that wheel was not {place} but {was}. Leave the place out, or move the wheel first.',

  'unknown-wheel': 'There is no wheel {wheel} on that car. Add it first.',
  'wheel-name-taken': 'Another wheel of the car is already called {name}. Choose another name.',
  'wheel-twice': 'One wheel is named twice. Name each once.',
  'wheel-in-place': 'Wheel {wheel} is {place} on {date}. Move it off first, or give another place.',
  'wheel-place-taken': 'On {date} two wheels would be {place}. Move the other one too.',
  'not-a-tyre-code': 'A tyre date code has three or four digits, the last group of the number that begins with DOT: week, then year.',
  'tyre-week-impossible': 'There is no week {week} in the year of the code {code}. Read it again: week first, then year.',
  'tyre-week-ahead': 'The week of the code {code} has not come yet. Read it again: week first, then year.',
};
