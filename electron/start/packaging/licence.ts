/** The licence of one part that goes out: a package, or something built into one. */
export interface Licence {
  readonly name: string;
  /** As the part itself states it; null where what is built in states none. */
  readonly version: string | null;
  /** An SPDX expression. */
  readonly licence: string;
  /** Copyright and licence in full, one text for each file that holds them. */
  readonly texts: readonly string[];
  /** The package that it is built into. */
  readonly within?: string;
}

/** Whether an SPDX expression is met by licences of the list: every part joined by AND, one of those joined by OR. */
export function isAllowed(expression: string, allowed: Readonly<Record<string, unknown>>): boolean {
  const bare = expression.replaceAll(/[()]/g, ' ').trim();
  if (/\bAND\b/.test(bare) && /\bOR\b/.test(bare)) throw new Error(`"${expression}" mixes AND with OR: read it, and say what it comes to.`);
  if (/\bAND\b/.test(bare)) return bare.split(/\bAND\b/).every((one) => Object.hasOwn(allowed, one.trim()));
  return bare.split(/\bOR\b/).some((one) => Object.hasOwn(allowed, one.trim()));
}
