import { z } from 'zod';
import { refusedBy } from './refused-by.ts';

// Finding control characters is what this is for.
const CONTROL_CHARACTERS = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/;
const LONE_SURROGATE = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/;

/**
 * One line of text a person typed: trimmed, not empty, without control or direction characters.
 *
 * @example plainText(60).parse('  Pip ') //=> 'Pip'
 */
export function plainText(longest: number) {
  return longText(longest).min(1, refusedBy('text-empty')).refine((text) => !/[\n\r\t]/.test(text), refusedBy('control-characters'));
}

/** Text of several lines; may be empty. @example longText(500).parse(' two\nlines ') //=> 'two\nlines' */
export function longText(longest: number) {
  return z.string().trim().normalize('NFC').max(longest, refusedBy('text-too-long')).refine(isClean, refusedBy('control-characters'));
}

function isClean(text: string): boolean {
  return !CONTROL_CHARACTERS.test(text) && !LONE_SURROGATE.test(text);
}
