import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { temporaryFolder } from '../host/open-test-host.ts';
import { unzipped } from './unzipped.ts';

/** A pack taken apart: its folder, the text of its PDF on one line, and all its texts, bytes and file names in one. */
export interface PackTexts {
  readonly folder: string;
  readonly pdf: string;
  readonly all: string;
  readonly file: (path: string) => string;
}

/** Takes a pack apart with readers that share nothing with the program. Narrow spaces are told as plain ones. */
export async function packTexts(zip: string): Promise<PackTexts> {
  const folder = unzipped(zip, temporaryFolder());
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  const pdf = await pdfText(join(folder, 'data/history.pdf'));
  const all = [...files, ...files.map((file) => readFileSync(file).toString('utf8')), pdf].join('\n');
  return { folder, pdf, all, file: (path) => readFileSync(join(folder, path), 'utf8') };
}

async function pdfText(file: string): Promise<string> {
  const pdf = await getDocument({ data: new Uint8Array(readFileSync(file)), useSystemFonts: false }).promise;
  const pages = await Promise.all(Array.from({ length: pdf.numPages }, async (_, at) => (await (await pdf.getPage(at + 1)).getTextContent()).items));
  return pages.flat().map((item) => ('str' in item ? item.str : '')).join(' ').replaceAll('\u202f', ' ').replace(/\s+/g, ' ');
}
