import canonicalize from 'canonicalize';
import { must } from '../result/assert.ts';

/** A value that JSON can carry. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json };

/** What keeps a value from being I-JSON, and where it stands: `['fields', 'note']`. */
export interface IJsonFault {
  readonly why: 'not-finite' | 'lone-surrogate' | 'not-json' | 'not-plain' | 'too-deep';
  readonly path: readonly (string | number)[];
}

/** Deeper values are refused: nothing of ours nests so far, and a stranger's file must not exhaust the stack. */
const DEEPEST = 100;

/**
 * The one text of a JSON value: keys sorted by UTF-16 unit, shortest numbers, no white space. A value that is not
 * I-JSON is our own bug and throws; a stranger's value is asked about first with `iJsonFault`.
 *
 * Source: RFC 8785 (text from memory), its companion test files (seen); I-JSON is RFC 7493 (from memory).
 * @example canonicalJson({ b: 1.0, a: [] }) //=> '{"a":[],"b":1}'
 */
export function canonicalJson(value: unknown): string {
  const fault = iJsonFault(value);
  if (fault !== null) throw new Error(`Bug: not I-JSON (${fault.why}) at /${fault.path.join('/')}`);
  return must(canonicalize(value), 'canonical text');
}

/**
 * The first thing that keeps a value from being I-JSON, or null where it has one canonical text.
 *
 * @example iJsonFault({ a: NaN }) //=> { why: 'not-finite', path: ['a'] }
 */
export function iJsonFault(value: unknown, path: readonly (string | number)[] = []): IJsonFault | null {
  if (path.length > DEEPEST) return { why: 'too-deep', path };
  if (value === null || typeof value === 'boolean') return null;
  if (typeof value === 'number') return Number.isFinite(value) ? null : { why: 'not-finite', path };
  if (typeof value === 'string') return isWellFormed(value) ? null : { why: 'lone-surrogate', path };
  if (typeof value !== 'object') return { why: 'not-json', path };
  return Array.isArray(value) ? faultInList(value, path) : faultInObject(value, path);
}

function faultInList(list: readonly unknown[], path: readonly (string | number)[]): IJsonFault | null {
  for (let at = 0; at < list.length; at += 1) {
    const fault = iJsonFault(list[at], [...path, at]);
    if (fault !== null) return fault;
  }
  return null;
}

function faultInObject(object: object, path: readonly (string | number)[]): IJsonFault | null {
  const parent: unknown = Object.getPrototypeOf(object);
  if (parent !== Object.prototype && parent !== null) return { why: 'not-plain', path };
  if (Object.getOwnPropertySymbols(object).length > 0) return { why: 'not-plain', path };
  for (const [name, value] of Object.entries(object)) {
    const here = [...path, name];
    if (!isWellFormed(name)) return { why: 'lone-surrogate', path: here };
    const fault = iJsonFault(value, here);
    if (fault !== null) return fault;
  }
  return null;
}

const LONE_SURROGATE = /\p{Surrogate}/u;

/** Whether every surrogate has its other half. @example isWellFormed('\ud83d') //=> false */
export function isWellFormed(text: string): boolean {
  return !LONE_SURROGATE.test(text);
}
