import { ok, refuse, type Result } from '../result/result.ts';
import { base32Bytes, base32Text } from './base32-text.ts';
import { crc32 } from './crc32.ts';
import { hexBytes, hexText, joinBytes, sameBytes } from './hex-text.ts';
import { sealSchema, type Seal } from './seal.ts';

/** What every printed seal begins with; the number is the version of its form. */
const BEGINS = 'TRUNNION SEAL 1';
const BEGINS_PRESSED = 'TRUNNIONSEAL';
const SIZE_BYTES = 6;
const BODY_BYTES = SIZE_BYTES + 32 + 32 + 64;
const CHECK_BYTES = 4;
const GROUP = 4;
const GROUPS_A_LINE = 8;

/**
 * A seal to print or send: its opening words, then groups of four digits and letters, seven lines of eight. The last
 * seven carry a check, so that a slip of the pen is noticed.
 *
 * Source of the check: CRC-32, which finds every slip within 32 bits, so any one character or two neighbours swapped.
 */
export function sealText(seal: Seal): string {
  const body = joinBytes(sizeBytes(seal.treeSize), hexBytes(seal.root), hexBytes(seal.keyFingerprint), hexBytes(seal.signature));
  const groups = base32Text(joinBytes(body, checkBytes(body))).match(new RegExp(`.{1,${GROUP}}`, 'g')) ?? [];
  const lines: string[] = [];
  for (let at = 0; at < groups.length; at += GROUPS_A_LINE) lines.push(groups.slice(at, at + GROUPS_A_LINE).join(' '));
  return [BEGINS, ...lines].join('\n');
}

/**
 * The seal of a printed or sent text, whatever its white space, line breaks, hyphens and case, and whatever stands before it or, after an
 * empty line, behind it. Refused `not-a-seal` where none begins in it, `seal-from-newer` where its form is a later one, `seal-incomplete`
 * where characters are missing or too many, `seal-mistyped` where its check does not fit.
 */
export function parseSeal(text: string): Result<Seal> {
  const from = text.search(/TRUNNION\W*SEAL/i);
  if (from < 0) return refuse('not-a-seal');
  const whole = parsePressed(pressed(text.slice(from)));
  // Of the right length, or alone: nothing that was copied along stands behind it.
  if (whole.ok || whole.refusal.code === 'seal-mistyped') return whole;
  return parsePressed(pressed(text.slice(from).split(/\n\s*\n/)[0] ?? ''));
}

function pressed(text: string): string {
  return text.toUpperCase().replaceAll(/[^0-9A-Z]/g, '');
}

function parsePressed(letters: string): Result<Seal> {
  const [version, digits] = [letters.charAt(BEGINS_PRESSED.length), letters.slice(BEGINS_PRESSED.length + 1)];
  if (/[2-9]/.test(version)) return refuse('seal-from-newer', { version });
  const wanted = Math.ceil(((BODY_BYTES + CHECK_BYTES) * 8) / 5);
  if (digits.length !== wanted) return refuse('seal-incomplete', { found: digits.length, wanted });
  const bytes = base32Bytes(digits);
  const body = bytes?.slice(0, BODY_BYTES);
  if (bytes === null || body === undefined || !sameBytes(bytes.slice(BODY_BYTES), checkBytes(body))) return refuse('seal-mistyped');
  return sealOf(body);
}

function sealOf(body: Uint8Array): Result<Seal> {
  const part = (from: number, length: number) => hexText(body.slice(from, from + length));
  const seal = sealSchema.safeParse({
    treeSize: Number.parseInt(part(0, SIZE_BYTES), 16),
    root: part(SIZE_BYTES, 32),
    keyFingerprint: part(SIZE_BYTES + 32, 32),
    signature: part(SIZE_BYTES + 64, 64),
  });
  return seal.success ? ok(seal.data) : refuse('seal-mistyped');
}

function sizeBytes(size: number): Uint8Array {
  return hexBytes(size.toString(16).padStart(2 * SIZE_BYTES, '0'));
}

function checkBytes(body: Uint8Array): Uint8Array {
  return hexBytes(crc32(body).toString(16).padStart(2 * CHECK_BYTES, '0'));
}
