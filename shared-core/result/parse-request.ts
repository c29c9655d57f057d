import type { z } from 'zod';
import { faultInWords } from './fault-in-words.ts';
import { ok, refuse, type Refusal, type Result } from './result.ts';
import { codeIn } from './refused-by.ts';

/**
 * Parses something that came from outside: the value, or a refusal that names the field at fault.
 *
 * @example parseRequest(z.object({ name: plainText(60) }), { name: '' }) //=> refused 'text-empty' at ['name']
 */
export function parseRequest<Value>(schema: z.ZodType<Value>, request: unknown): Result<Value> {
  const parsed = schema.safeParse(request);
  if (parsed.success) return ok(parsed.data);
  const issue = deepest(parsed.error.issues as readonly z.core.$ZodIssue[]);
  return { ok: false, refusal: refusalOf(issue) };
}

function refusalOf(issue: z.core.$ZodIssue): Refusal {
  const path = issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step));
  const field = path.length === 0 ? 'the request' : path.join('.');
  const code = codeIn(issue.message);
  if (code !== null) return refuse(code, { field }, path).refusal;
  if (issue.code === 'unrecognized_keys') return refuse('unknown-field', { field: [...path, issue.keys[0] ?? ''].join('.') }, path).refusal;
  return refuse('not-understood', { field, why: faultInWords(issue) }, path).refusal;
}

/** The first issue; within a union, the issue that reaches deepest, for that is what the sender meant. */
function deepest(issues: readonly z.core.$ZodIssue[]): z.core.$ZodIssue {
  const [first] = issues;
  if (first === undefined) throw new Error('Bug: a schema refused and named no issue');
  if (first.code !== 'invalid_union') return first;
  const inner = first.errors.flat().sort((a, b) => b.path.length - a.path.length)[0];
  return inner === undefined ? first : { ...inner, path: [...first.path, ...inner.path] };
}
