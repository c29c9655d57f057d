const MARK = 'refused:';

/** Gives a schema's check a refusal code of ours instead of the library's own sentence. @example z.string().min(1, refusedBy('text-empty')) */
export function refusedBy(code: string): { error: string } {
  return { error: MARK + code };
}

/** The refusal code in a schema's message, or null where the library wrote its own. */
export function codeIn(message: string): string | null {
  return message.startsWith(MARK) ? message.slice(MARK.length) : null;
}
