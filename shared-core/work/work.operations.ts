import { addFollowUp } from './add-follow-up.ts';
import { doFollowUp, dropFollowUp } from './end-follow-up.ts';
import { copySheet } from './copy-sheet.ts';
import { removeSheet, setSheet } from './set-sheet.ts';
import { showStartingSheets } from './show-starting-sheets.ts';
import { startSheet } from './start-sheet.ts';

/** What can be asked of the work itself by name. */
export const workOperations = {
  'sheet.set': setSheet,
  'sheet.start': startSheet,
  'sheet.copy': copySheet,
  'sheet.remove': removeSheet,
  'sheets.starting': showStartingSheets,
  'follow-up.add': addFollowUp,
  'follow-up.done': doFollowUp,
  'follow-up.drop': dropFollowUp,
} as const;
