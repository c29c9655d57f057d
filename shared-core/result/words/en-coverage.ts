/** What is said of a service's lines, and of what is to be watched. */
export const COVERAGE_WORDS: Readonly<Record<string, string>> = {
  'coverage-done': 'done',
  'coverage-looked-at': 'looked at, not replaced',
  'coverage-not-done': 'left undone',
  'coverage-nobody': 'nobody has done it',
  'coverage-none': 'The car has no service items to hold against its records.',
  'coverage-whole': 'All {lines} lines are done.',
  'coverage-whole-one': 'Its one line is done.',
  'coverage-one-open': 'Its one line is not done.',
  'coverage-open-one': 'Of {lines} lines one is done.',
  'coverage-open': '{done} of {lines} lines are done.',

  'unknown-service': 'There is no service {service} of that car.',
  'service-name-taken': 'The car has a service "{name}" from {from} on already. Change that one, or give this one another name.',
  'service-ends-before': 'The last day {to} is before the first one {from}. Check both.',
  'line-twice': 'The line "{line}" is named twice. Take one out.',
  'recheck-without-watch': 'Only a line to be watched has a day to look again; "{line}" is not. Set its outcome to watch, or take the day out.',
  'recheck-before-seen': 'The day to look again, {date}, is before {seen}, when it was seen. Check both dates.',
  'recheck-before-record': 'The day to look again, {date}, is before the work itself.',
};
