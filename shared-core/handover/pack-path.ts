import { isWellFormed } from '../journal/canonical-json.ts';
import { utf8Length } from '../journal/utf8-text.ts';

/** Why a path is not taken into or out of a pack. */
export type PathFault =
  | 'empty'
  | 'too-long'
  | 'surrogate'
  | 'control-character'
  | 'backslash'
  | 'absolute'
  | 'drive'
  | 'home'
  | 'step'
  | 'character'
  | 'end'
  | 'reserved';

/** Bytes of UTF-8: what every common system can still unpack below a folder of its own. */
const LONGEST_PATH = 200;
const CONTROL = /[\u0000-\u001f\u007f-\u009f]/;
const RESERVED = /^(?:con|prn|aux|nul|com[0-9]|lpt[0-9])(?:\.|$)/i;

/**
 * Why a path (with `/`) could lead out of the folder it is unpacked into, or fail on some system; null where it is safe.
 *
 * Source: RFC 8493 section 5.1 (seen) and the names of the 2018 disclosure (list from memory).
 * @example packPathFault('data/../../evil') //=> 'step'
 */
export function packPathFault(path: string): PathFault | null {
  if (path === '') return 'empty';
  if (!isWellFormed(path)) return 'surrogate';
  if (CONTROL.test(path)) return 'control-character';
  if (path.includes('\\')) return 'backslash';
  if (path.startsWith('/')) return 'absolute';
  if (/^[A-Za-z]:/.test(path)) return 'drive';
  if (path.startsWith('~')) return 'home';
  return utf8Length(path) > LONGEST_PATH ? 'too-long' : firstFault(path.split('/'));
}

function firstFault(steps: readonly string[]): PathFault | null {
  for (const step of steps) {
    if (step === '' || step === '.' || step === '..') return 'step';
    if (/[<>:"|?*]/.test(step)) return 'character';
    if (/[. ]$/.test(step)) return 'end';
    if (RESERVED.test(step)) return 'reserved';
  }
  return null;
}

/** What two paths have in common when some system takes them for the same: composed form, without case. */
export function pathLikeness(path: string): string {
  return path.normalize('NFC').toLowerCase().normalize('NFC');
}

/**
 * A file name that every system takes, made from any text: letters and digits of all scripts, hyphens, dots; at most
 * `longest` bytes. `otherwise` where nothing is left.
 *
 * @example safeFileName('../Invoice 3/4.pdf', 60, 'paper') //=> 'Invoice-3-4.pdf'
 */
export function safeFileName(text: string, longest: number, otherwise: string): string {
  const plain = text.normalize('NFC').replaceAll(/[^\p{L}\p{M}\p{N}._-]+/gu, '-');
  const trimmed = shortened(plain.replaceAll(/-?\.-|\.{2,}/g, '.').replaceAll(/-{2,}/g, '-').replace(/^[.-]+/, ''), longest).replace(/[.-]+$/, '');
  if (trimmed === '') return otherwise;
  return RESERVED.test(trimmed) ? `${otherwise}-${trimmed}` : trimmed;
}

function shortened(text: string, longest: number): string {
  let [kept, length] = ['', 0];
  for (const character of text) {
    length += utf8Length(character);
    if (length > longest) break;
    kept += character;
  }
  return kept;
}
