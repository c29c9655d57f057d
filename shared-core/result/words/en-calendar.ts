/** What stands in a calendar file. */
export const CALENDAR_WORDS: Readonly<Record<string, string>> = {
  'calendar-name': '{household}: cars',
  'calendar-item': '{car}: {name}',
  'calendar-item-late': '{car}: {name}, {late}',
  'calendar-item-window': 'Forecast: between {earliest} and {latest}.',
  'calendar-item-open-end': 'Forecast: from {earliest} on.',
  'calendar-arrange': 'Arrange it from {date} on.',
  'calendar-obligation': '{car}: {name}, last valid day',
  'calendar-obligation-opens': 'A renewal from {date} on keeps the day.',
  'calendar-recall': '{car}: recall {number}',
  'calendar-recheck': '{car}: look again, {text}',
  'calendar-session-home': 'Work at home: {cars}',
  'calendar-session-garage': '{place}: {cars}',
  'calendar-session-task': '- {car}: {name}',
  'calendar-session-task-done': '- {car}: {name} (done)',
  'calendar-session-minutes': 'About {minutes} minutes of work.',
  'calendar-other-file': 'At {path} stands a file that is no calendar. Name another one; nothing was written.',
};
