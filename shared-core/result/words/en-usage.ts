/** What the program says of doubtful readings, of how a car is used, and of how good its forecasts were. */
export const USAGE_WORDS: Readonly<Record<string, string>> = {
  'doubt-gone': 'It fits the other readings now. Say whether it is right.',
  'against': 'It does not agree with {value} {unit} on {date}. Either of the two may be wrong.',
  'against-likelier-slip': 'It does not agree with {value} {unit} on {date}. Without that one it would fit, so that one is the likelier slip.',
  'next-slip': 'The next reading, {value} {unit} on {date}, goes on as before, so this one was probably a slip.',
  'next-replaced': 'The next reading, {value} {unit} on {date}, goes on from this one, so the instrument was probably replaced. The car had then gone about {distance} {distanceUnit}.',
  'next-follows': 'It goes on from {value} {unit} on {date}, which looks like the first reading of a new instrument.',
  'next-unsure': 'The next reading, {value} {unit} on {date}, does not settle it.',

  'declared-far-off': 'You expect {declared} {declaredUnit} a year, but the readings say about {measured} {unit}. Your figure was set aside; check it.',
  'use-changed': 'It is used otherwise since {date}, so what it was driven before that day no longer counts.',
  'use-changed-unread': 'It is used otherwise since {date}, and nothing was read since. Enter a reading.',
  'lay-up-open': 'Laid up since {from}, and nobody has said until when. Say when it is back on the road.',
  'lay-up-driven': 'By its readings it was driven {distance} {unit} while it was laid up from {from}. Check the days of the lay-up.',

  'track-none': 'Nothing that was foreseen has come true or failed yet: there are too few readings.',
  'track-readings': '{inside} of {n} readings fell inside the range foreseen {months} months before.',
  'track-readings-one': '{inside} of 1 reading fell inside the range foreseen {months} months before.',
  'track-dates': '{inside} of {n} times, a further {distance} {unit} were reached within the dates foreseen.',
  'track-dates-one': '{inside} of 1 time, a further {distance} {unit} were reached within the dates foreseen.',
  'track-too-few': 'That is too few to judge by.',
  'track-as-meant': 'About 8 in 10 should, so it does what it promises.',
  'track-missed-often': 'About 8 in 10 should: this car is harder to foresee than most, so look at its dates with more care and enter readings more often.',
  'track-rarely-missed': 'About 8 in 10 should: this car is easier to foresee than most, and its dates are wider than need be.',
};

/** Why a lay-up, a change of use or a reading was not taken. */
export const USAGE_REFUSALS: Readonly<Record<string, string>> = {
  'unknown-lay-up': 'There is no such lay-up.',
  'lay-up-ends-before': 'A lay-up from {from} cannot end on {to}. Check both days.',
  'lay-up-overlaps': 'The car is already laid up from {from} to {to}. Change that lay-up instead.',
  'lay-up-overlaps-open': 'The car is already laid up from {from}, with no end given. Say when that ends first.',
  'unknown-use-change': 'There is no such change of use.',
  'use-changed-that-day': 'The use is already said to have changed on {date}. Change that one instead.',
  'unknown-instrument': 'There is no such replaced instrument.',
  'no-other-reading': 'That reading contradicts no other one any more. Say whether it is right itself.',
};
