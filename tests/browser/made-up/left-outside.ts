import { STARTING_SETS } from '../../../shared-core/care/starting-set.ts';
import { STARTING_SHEETS } from '../../../shared-core/work/starting-sheet.ts';

/** Signs of units, currencies and formats, which are alike in every language. */
const SIGNS = new Set(['km', 'mi', 'mm', 'in', 'V', 'C', 'F', 'N', 'm', 'Nm', 'kg', 'kPa', 'bar', 'psi', 'GBP', 'UTC', 'CSV', 'PDF', 'JSON', 'SHA', 'QR', 'L', 'US', 'qt', 'imp', 'pt', 'gal', 'x', 'h', 'min']);
/** Kinds and ids: what a program reads and no person should. They are no data of anybody's, and show where a name was forgotten. */
const OF_PROGRAMS = /^[a-z0-9]+(-[a-z0-9]+)*$/;
/** Fields in which a single small word is the keeper's own all the same. */
const FREE_TEXT = new Set(['name', 'text', 'note', 'title', 'tools', 'what', 'where', 'lender', 'reference', 'colour', 'method', 'consumables', 'reset', 'checks', 'source', 'access', 'description']);

/** Every text of a value that is somebody's own: a journal entry's, or a starting set's that may become one. */
export function ownTexts(value: unknown, field = ''): string[] {
  if (typeof value === 'string') return value.trim() === '' || (OF_PROGRAMS.test(value) && !FREE_TEXT.has(field)) ? [] : [value];
  if (Array.isArray(value)) return value.flatMap((one) => ownTexts(one, field));
  return typeof value === 'object' && value !== null ? Object.entries(value).flatMap(([name, one]) => ownTexts(one, name)) : [];
}

/** What of a text is left once everything is taken out that was told through the made-up locale or is data, and still has letters. */
export type LeftOutside = (text: string) => string;

/**
 * Finds what is told past the made-up locale, beside texts that are somebody's own.
 *
 * @example leftOutside(['Pip'])('⟦Ŵôŕķ⟧ Pip, due 2026/11/25') //=> 'due'
 */
export function leftOutside(own: Iterable<string>): LeftOutside {
  const texts = new Set([...own, ...ownTexts(STARTING_SETS), ...ownTexts(STARTING_SHEETS)].map(plain).filter((text) => /\p{L}/u.test(text)));
  const longestFirst = [...texts].sort((a, b) => b.length - a.length);
  return (text) => {
    let rest = plain(withoutTold(text));
    if (!/\p{L}/u.test(rest)) return '';
    for (const one of longestFirst) if (rest.includes(one)) rest = rest.replace(wholeWords(one), ' ');
    const words = rest.replace(/\b[0-9a-f]{8,}\b|\b[0-9A-F]{2}(:[0-9A-F]{2})+\b/g, ' ').match(/\p{L}[\p{L}’']*/gu) ?? [];
    const strange = words.filter((word) => !SIGNS.has(word));
    return strange.length === 0 ? '' : rest.trim();
  };
}

/** Told phrases stand within told phrases: the innermost are taken out first. */
function withoutTold(text: string): string {
  const without = text.replace(/⟦[^⟦⟧]*⟧/g, ' ');
  return without === text ? text : withoutTold(without);
}

function wholeWords(text: string): RegExp {
  return new RegExp(`(?<![\\p{L}\\p{N}])${text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![\\p{L}\\p{N}])`, 'gu');
}

function plain(text: string): string {
  return text.replace(/[\s\u00a0\u202f]+/g, ' ').trim();
}
