/** What a reminder on the desktop says. */
export const REMINDER_WORDS: Readonly<Record<string, string>> = {
  'reminder-item': '{car}: {name}, time to arrange it',
  'reminder-item-late': '{car}: {name}, {late}',
  'reminder-obligation': '{car}: {name}, by {date}',
  'reminder-obligation-late': '{car}: {name}, over since {date}',
  'reminder-recall': '{car}: recall {number}, ask the maker’s garage',
  'reminder-recheck': '{car}: look again, {text}',
  'reminder-follow-up': '{car}: {text}',
  'reminder-session': '{cars}: work on {date}, {place}',
  'reminder-title': 'The cars of {household}',
  'reminder-title-late': 'Late: the cars of {household}',
  'reminder-more': 'and {n} more in the yard',
};
