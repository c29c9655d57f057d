import { ok, refuse, type Result } from '../../shared-core/result/result.ts';

/** A table's bytes as text, and the encoding they were in. */
export interface DecodedTable {
  readonly text: string;
  readonly encoding: 'UTF-8' | 'UTF-16LE' | 'UTF-16BE' | 'Windows-1252';
}

/** What begins files that are no text: ZIP archives (spreadsheets among them), old spreadsheets, documents. */
const NOT_TEXT: readonly string[] = ['504b0304', 'd0cf11e0', '25504446'];

const MARKS = [
  { mark: 'efbbbf', encoding: 'UTF-8' },
  { mark: 'fffe', encoding: 'UTF-16LE' },
  { mark: 'feff', encoding: 'UTF-16BE' },
] as const;

/**
 * The text of a table. A mark of byte order names its encoding, and bytes that then do not fit are refused; without one it is
 * UTF-8 where every byte fits, else Windows-1252, which fits any bytes.
 *
 * Source: Unicode 16 s23.8 on the marks; WHATWG Encoding (both from memory); that old tables are Windows-1252 is common practice.
 * @example decodeTable(Buffer.from('km', 'latin1')) //=> { ok: true, value: { text: 'km', encoding: 'UTF-8' } }
 */
export function decodeTable(bytes: Uint8Array): Result<DecodedTable> {
  const start = Buffer.from(bytes.subarray(0, 4)).toString('hex');
  if (NOT_TEXT.some((begin) => start.startsWith(begin))) return refuse('import-spreadsheet');
  const marked = MARKS.find(({ mark }) => start.startsWith(mark));
  const text = decode(bytes, marked?.encoding ?? 'UTF-8');
  if (text !== null) return ok({ text, encoding: marked?.encoding ?? 'UTF-8' });
  if (marked !== undefined) return refuse('import-encoding', { encoding: marked.encoding });
  return ok({ text: new TextDecoder('windows-1252').decode(bytes), encoding: 'Windows-1252' });
}

/** Null where the bytes do not fit. */
function decode(bytes: Uint8Array, encoding: 'UTF-8' | 'UTF-16LE' | 'UTF-16BE'): string | null {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
