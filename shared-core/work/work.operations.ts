import { addFollowUp } from './add-follow-up.ts';
import { askBooking } from './ask-booking.ts';
import { bookSession } from './book-session.ts';
import { cameBack } from './came-back.ts';
import { dropBooking } from './drop-booking.ts';
import { doFollowUp, dropFollowUp } from './end-follow-up.ts';
import { copySheet } from './copy-sheet.ts';
import { beginWork } from './begin-work.ts';
import { moveWithWork } from './move-with-work.ts';
import { readAtStep, unreadAtStep } from './read-at-step.ts';
import { putOffFollowUp } from './put-off-follow-up.ts';
import { quoteBooking, removeQuote } from './quote-booking.ts';
import { removeSheet, setSheet } from './set-sheet.ts';
import { showStartingSheets } from './show-starting-sheets.ts';
import { startSheet } from './start-sheet.ts';
import { dropPhoto, takePhoto } from './take-photo.ts';
import { takeTime } from './take-time.ts';
import { tickStep, untickStep } from './tick-step.ts';

/** What can be asked of the work itself by name, and of sessions where it concerns the work in hand. */
export const workOperations = {
  'sheet.set': setSheet,
  'sheet.start': startSheet,
  'sheet.copy': copySheet,
  'sheet.remove': removeSheet,
  'sheets.starting': showStartingSheets,
  'follow-up.add': addFollowUp,
  'follow-up.done': doFollowUp,
  'follow-up.put-off': putOffFollowUp,
  'follow-up.drop': dropFollowUp,
  'session.move': moveWithWork,
  'work.begin': beginWork,
  'work.tick': tickStep,
  'work.untick': untickStep,
  'work.read': readAtStep,
  'work.unread': unreadAtStep,
  'work.time': takeTime,
  'work.photo': takePhoto,
  'work.drop-photo': dropPhoto,
  'booking.ask': askBooking,
  'booking.quote': quoteBooking,
  'booking.quote-remove': removeQuote,
  'booking.book': bookSession,
  'booking.came-back': cameBack,
  'booking.drop': dropBooking,
} as const;
