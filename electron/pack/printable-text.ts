import PDFDocument from 'pdfkit';
import type { DocumentValue } from '../../shared-core/handover/document-value.ts';
import { sayOf } from '../../shared-core/result/words/say.ts';
import { BOLD, REGULAR } from './paper-page.ts';

/** A text as the fonts of the page can print it, and how many places of it they cannot. */
export interface PrintableText {
  readonly text: string;
  readonly places: number;
}

/** What draws nothing of its own: joiners, variation selectors. */
const DRAWS_NOTHING = /\p{Default_Ignorable_Code_Point}/u;
const BREAKS = new Set(['\n', '\r', '\t']);

/**
 * The text with each run of characters that are in no font replaced by how many they were: a box would say less.
 *
 * @example printableText('Öl 機油', canPrint) //=> { text: 'Öl [2 characters that this page cannot print; see data/history.json]', places: 1 }
 */
export function printableText(text: string, canPrint: (character: string) => boolean): PrintableText {
  let [printed, missing, spaces, places] = ['', 0, '', 0];
  const endRun = () => {
    if (missing > 0) printed += sayOf('unprinted-characters', { n: missing, file: 'data/history.json' });
    places += missing > 0 ? 1 : 0;
    printed += spaces;
    [missing, spaces] = [0, ''];
  };
  for (const character of text) {
    const isThere = BREAKS.has(character) || canPrint(character);
    if (!isThere && DRAWS_NOTHING.test(character)) continue;
    if (!isThere) [missing, spaces] = [missing + 1, ''];
    else if (missing > 0 && character === ' ') spaces += character;
    else {
      endRun();
      printed += character;
    }
  }
  endRun();
  return { text: printed, places };
}

/** Whether both fonts of the page hold a character. */
export function fontsHold(): (character: string) => boolean {
  const pdf = new PDFDocument({ autoFirstPage: false });
  // The library has no public way to ask a font that it has opened.
  const fonts = [REGULAR, BOLD].map((name) => (pdf.font(name) as unknown as { readonly _font: { readonly font: { hasGlyphForCodePoint(code: number): boolean } } })._font.font);
  return (character) => fonts.every((font) => font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0));
}

/** A document as it can be printed; `places` counts what cannot be. */
export function printableDocument(value: DocumentValue): { readonly document: DocumentValue; readonly places: number } {
  const canPrint = fontsHold();
  let places = 0;
  const printed = <Value>(part: Value): Value => {
    if (typeof part === 'string') {
      const one = printableText(part, canPrint);
      places += one.places;
      return one.text as Value;
    }
    if (Array.isArray(part)) return part.map(printed) as Value;
    return typeof part === 'object' && part !== null ? (Object.fromEntries(Object.entries(part).map(([name, inner]) => [name, printed(inner as unknown)])) as Value) : part;
  };
  const blocks = printed(value.blocks);
  const counted = places;
  return { document: { ...value, blocks, foot: printed(value.foot) }, places: counted };
}
