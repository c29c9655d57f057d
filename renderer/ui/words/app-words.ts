/** Words of the frame and of what every screen shares. */
export const APP_WORDS = {
  'app.name': 'Trunnion',
  'app.skip': 'Skip to the screen',
  'app.screens': 'Screens',
  'screen.yard': 'Yard',
  'screen.car': 'Car',
  'screen.settings': 'Settings',
  'screen.lost': 'Nothing here',
  'screen.lost-what': 'There is no screen at this address. The yard shows all cars.',
  'screen.to-yard': 'Go to the yard',

  'sample.line': 'Sample household, proves nothing.',
  'sample.leave': 'Leave the sample',
  'sample.left': 'You have left the sample.',

  'start.title': 'Welcome to Trunnion',
  'start.lead': 'It keeps the care of all your cars in one place: what is due and when, what was done, what it cost, and how to prove it.',
  'start.sample': 'Look around first',
  'start.sample-what': 'Five invented cars with six years of readings, work and papers, in a folder of their own; you leave them with one press.',
  'start.sample-open': 'Open the sample household',
  'start.empty': 'Start your own',
  'start.empty-what': 'An empty household in this folder; you add your first car next.',
  'start.empty-open': 'Start the household',
  'start.kept': 'Everything stays on this computer, in {folder}.',

  'asking': 'Asking …',
  'failed.title': 'That did not work',
  'failed.again': 'Try again',
  'refused.title': 'That cannot be shown',

  'notice.place': 'What was just done',
  'notice.undo': 'Undo',
  'notice.close': 'Close this note',
  'notice.undone': 'Undone. The entry stays in the journal, marked as withdrawn.',

  'form.more': 'More about it',
  'form.close': 'Close',
  'form.cancel': 'Cancel',
  'form.not-done': 'Not recorded.',
  'form.sending': 'Recording …',
  'form.kept': 'You had begun this before; what you typed is still here.',
  'form.start-over': 'Start over',

  'unit.km': 'km',
  'unit.mi': 'mi',
  'unit.kilometres': 'kilometres (km)',
  'unit.miles': 'miles (mi)',
} as const;
