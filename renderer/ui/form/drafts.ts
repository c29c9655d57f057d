/**
 * What was typed into forms that were left without recording, by the form's name: opened again, a form goes on where it
 * was. Kept in the page alone.
 */
const left = new Map<string, object>();

/** What was typed before, or null. */
export function draftLeft<Draft extends object>(key: string): Draft | null {
  return (left.get(key) ?? null) as Draft | null;
}

/** Keeps what was typed so far. */
export function leaveDraft(key: string, draft: object): void {
  left.set(key, draft);
}

/** Forgets what was typed: it is recorded, or the person starts over. */
export function dropDraft(key: string): void {
  left.delete(key);
}
