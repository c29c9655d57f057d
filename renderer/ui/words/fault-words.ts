/**
 * Words of refusals as a form says them at the field, where the core's sentence would name the field by its name in the
 * request; and faults that the form finds by itself while it reads what was typed.
 */
export const FAULT_WORDS = {
  'fault.this-field': 'this field',
  'fault.text-empty': 'This is empty. Write something.',
  'fault.text-too-long': 'This is too long. Shorten it.',
  'fault.control-characters': 'This holds characters that cannot be shown. Type it again.',
  'fault.not-understood': 'This is not as it should be. Look at it again.',
  'fault.not-an-id': 'This may hold only lower-case letters, digits and hyphens, 64 at most.',
  'fault.not-a-digest': 'This must be the 64-digit digest of a paper.',
  'fault.not-a-quantity': 'Write a quantity above 0.',
  'fault.unknown-unit': 'Choose kilometres or miles.',
  'fault.not-an-amount': 'Write an amount of {currency}, such as {example}.',
  'fault.unknown-currency': 'Write the three letters of a currency, such as GBP or EUR.',
  'fault.not-a-number': 'Write a number, such as {example}.',
  'fault.not-whole': 'Write a whole number.',
  'fault.no-date': 'Write a whole date, with four digits for the year.',
  'fault.nothing-chosen': 'Choose at least one line, or write one of your own.',
  'fault.amend-without-why': 'Say why it is amended: the reason stands beside what was written first.',
  'fault.amend-nothing': 'Nothing is different from what stands. Change what is to be amended.',
  'fault.nothing-moved': 'Every wheel is where it was. Choose another place for one at least.',
  'fault.file-unreadable': 'The file {name} could not be read. Choose it again.',
  'fault.file-too-large': 'The file {name} is larger than 25 MB. Make it smaller.',
  'fault.file-empty': 'The file {name} is empty.',
  'fault.no-answer': 'The program did not answer. Is it still running? What you typed is still here.',
  'fault.without-words': 'It was refused ({code}). Look at what you typed and try again.',
  'fault.sheet-without-steps': 'A sheet has one step at least. Write the first one, or remove the whole sheet.',
  'fault.choose-outcome': 'Some of its steps were done and some were not. Say how it went.',
  'fault.choose-figure': 'No figure is chosen. Choose one, or take this out.',
} as const;
