import type { z } from 'zod';

/** What a value should be, by the name that a schema gives its kind. */
const KINDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object with named fields',
  record: 'an object with named fields',
};

/**
 * What is wrong with a value, in words that end a sentence; for what no check of ours has a code of its own.
 *
 * @example faultInWords({ code: 'too_big', origin: 'number', maximum: 12, ... }) //=> 'it must be at most 12'
 */
export function faultInWords(issue: z.core.$ZodIssue): string {
  if (issue.code === 'invalid_type') return wrongKind(issue);
  if (issue.code === 'invalid_value') return `it must be ${anyOf(issue.values.map((value) => String(value)))}`;
  if (issue.code === 'too_small') return `it must ${bound(issue.origin, Number(issue.minimum), issue.inclusive === false ? 'more than' : 'at least')}`;
  if (issue.code === 'too_big') return `it must ${bound(issue.origin, Number(issue.maximum), issue.inclusive === false ? 'less than' : 'at most')}`;
  if (issue.code === 'not_multiple_of') return `it must be a multiple of ${issue.divisor}`;
  return 'it is not written as it must be';
}

function wrongKind(issue: z.core.$ZodIssueInvalidType): string {
  // The library keeps the value itself out of an issue; only its sentence tells what is missing from what is wrong.
  return issue.message.endsWith('received undefined') ? 'it is missing' : `it must be ${KINDS[issue.expected] ?? 'of another kind'}`;
}

function bound(origin: string, limit: number, word: 'at least' | 'more than' | 'at most' | 'less than'): string {
  const isSized = origin === 'string' || origin === 'array';
  if (isSized && word === 'at least' && limit === 1) return 'not be empty';
  if (origin === 'string') return `have ${word} ${limit} characters`;
  return `${isSized ? 'hold' : 'be'} ${word} ${limit}`;
}

function anyOf(values: readonly string[]): string {
  return values.length < 2 ? (values[0] ?? 'nothing') : `${values.slice(0, -1).join(', ')} or ${values.at(-1) ?? ''}`;
}
