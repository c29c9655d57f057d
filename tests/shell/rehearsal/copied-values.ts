import { parse, stringify } from 'devalue';

/** A field of its own named __proto__, which a copied value may have. */
const hasProtoField = (value: unknown): value is object => typeof value === 'object' && value !== null && !Array.isArray(value) && Object.hasOwn(value, '__proto__');

/** A value as text, whole as a window's page copies it to its program: dates, maps, bytes, rings and all; throws for what cannot be copied. */
export function copiedText(value: unknown): string {
  return stringify(value, { fields: (given: unknown) => hasProtoField(given) && Object.entries(given) });
}

/** The value of such a text. @example copiedValue(copiedText(new Date(0))) //=> Date 1970-01-01 */
export function copiedValue(text: string): unknown {
  return parse(text, { fields: (entries: [string, unknown][]) => Object.fromEntries(entries) }) as unknown;
}
