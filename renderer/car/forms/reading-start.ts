import type { ReadingDraft } from './reading-draft.ts';

/** The form as it opens. */
export function readingDraft(today: string): ReadingDraft {
  return { value: '', unit: '', date: today, source: 'keeper', note: '', files: [], replaced: false, lastShown: '', lastUnit: '', sure: false, laterOfNew: false };
}
