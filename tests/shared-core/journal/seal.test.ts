import { createPrivateKey } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ed25519Signer, rawPublicKey, sha256, verifyEd25519 } from '../../../electron/host/node-digests.ts';
import { hexBytes, hexText } from '../../../shared-core/journal/hex-text.ts';
import { keyFingerprint, makeSeal, sealFault } from '../../../shared-core/journal/seal.ts';
import { parseSeal, sealText } from '../../../shared-core/journal/seal-text.ts';
import vectors from '../../reference/ed25519-rfc8032.json' with { type: 'json' };

const PRIVATE_KEY_PREFIX = '302e020100300506032b657004220420';
function keyOf(seed: string) {
  return createPrivateKey({ key: Buffer.from(PRIVATE_KEY_PREFIX + seed, 'hex'), format: 'der', type: 'pkcs8' });
}

const [first, second] = vectors.cases;
const key = keyOf(first?.seed ?? '');
const publicKey = rawPublicKey(key);
const fingerprint = keyFingerprint(publicKey, sha256);
const head = { treeSize: 1234, root: 'ab'.repeat(32) };
const seal = makeSeal(head, fingerprint, ed25519Signer(key));

describe('a seal', () => {
  test('holds under its own key', () => {
    expect(sealFault(seal, publicKey, sha256, verifyEd25519)).toBeNull();
  });

  test('is the same each time', () => {
    expect(makeSeal(head, fingerprint, ed25519Signer(key))).toEqual(seal);
  });

  test.each([
    { case: 'another size', seal: { ...seal, treeSize: 1235 }, fault: 'bad-signature' },
    { case: 'another root', seal: { ...seal, root: 'ac'.repeat(32) }, fault: 'bad-signature' },
    { case: 'another signature', seal: { ...seal, signature: '00'.repeat(64) }, fault: 'bad-signature' },
    { case: 'another fingerprint', seal: { ...seal, keyFingerprint: '00'.repeat(32) }, fault: 'other-key' },
  ])('does not hold with $case', ({ seal: given, fault }) => {
    expect(sealFault(given, publicKey, sha256, verifyEd25519)).toBe(fault);
  });

  test('does not hold under another key that takes its fingerprint', () => {
    const other = rawPublicKey(keyOf(second?.seed ?? ''));
    expect(sealFault(seal, other, sha256, verifyEd25519)).toBe('other-key');
    expect(sealFault({ ...seal, keyFingerprint: keyFingerprint(other, sha256) }, other, sha256, verifyEd25519)).toBe('bad-signature');
  });
});

describe('a seal as text', () => {
  const text = sealText(seal);

  test('comes back from its text', () => {
    expect(parseSeal(text)).toEqual({ ok: true, value: seal });
    expect(text.split('\n').map((line) => line.length)).toEqual([15, 39, 39, 39, 39, 39, 39, 36]);
  });

  test.each([
    { case: 'all on one line, pressed together', change: (t: string) => t.replaceAll(/\s/g, '') },
    { case: 'broken anew, quoted in a letter', change: (t: string) => t.replaceAll(/(.{17})/g, '$1\r\n> ') },
    { case: 'small letters, hyphens', change: (t: string) => t.toLowerCase().replaceAll(' ', '-') },
    { case: 'O for 0 and I or l for 1', change: (t: string) => `${t.slice(0, 16)}${t.slice(16).replaceAll('0', 'O').replaceAll('1', 'l')}` },
  ])('is read when $case', ({ change }) => {
    expect(parseSeal(`\n ${change(text)} \n`)).toEqual({ ok: true, value: seal });
  });

  test('notices each single character mistyped, and each pair of neighbours swapped', () => {
    const digits = text.replaceAll(/\s/g, '').split('');
    for (let at = 'TRUNNIONSEAL1'.length; at < digits.length; at += 1) {
      const mistyped = digits.with(at, digits[at] === 'A' ? 'B' : 'A').join('');
      expect(parseSeal(mistyped)).toMatchObject({ ok: false, refusal: { code: 'seal-mistyped' } });
      const [here, next] = [digits[at] ?? '', digits[at + 1]];
      if (next === undefined || next === here) continue;
      expect(parseSeal(digits.with(at, next).with(at + 1, here).join(''))).toMatchObject({ ok: false, refusal: { code: 'seal-mistyped' } });
    }
  });

  test.each([
    { case: 'with the lines that the program prints about it', given: `Over 23 entries:\n${text}\n\nWhoever holds this seal can later tell.\n` },
    { case: 'cited in a letter', given: `Dear next keeper\r\n\r\n${text.split('\n').map((line) => `> ${line}`).join('\r\n')}\r\n\r\nKeep it well` },
    { case: 'with an empty line after each', given: text.replaceAll('\n', '\n\n') },
  ])('is found $case', ({ given }) => {
    expect(parseSeal(given)).toEqual(parseSeal(text));
    expect(parseSeal(given).ok).toBe(true);
  });

  test.each([
    { text: '', code: 'not-a-seal' },
    { text: 'a letter', code: 'not-a-seal' },
    { text: 'TRUNNION SEAL 2 ABCD', code: 'seal-from-newer' },
    { text: text.slice(0, -1), code: 'seal-incomplete' },
    { text: `${text}A`, code: 'seal-incomplete' },
    { text: 'TRUNNION SEAL 1', code: 'seal-incomplete' },
    { text: text.replace(/.$/, 'U'), code: 'seal-mistyped' },
    { text: `Over 23 entries:\n${text.replace(/.$/, 'U')}\n\nWhoever holds this seal`, code: 'seal-mistyped' },
  ])('is refused as $code', ({ text: given, code }) => {
    expect(parseSeal(given)).toMatchObject({ ok: false, refusal: { code } });
  });

  test('carries any size and any bytes', () => {
    const bytes = (n: number) => fc.uint8Array({ minLength: n, maxLength: n }).map(hexText);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2 ** 48 - 1 }), bytes(32), bytes(32), bytes(64), (treeSize, root, keyFingerprint, signature) => {
        const given = { treeSize, root, keyFingerprint, signature };
        expect(parseSeal(sealText(given))).toEqual({ ok: true, value: given });
      }),
    );
  });
});

describe('RFC 8032 vectors through the host', () => {
  // Source: RFC 8032 section 7.1, tests 1 to 3 (seen, recomputed).
  test.each(vectors.cases)('message "$msg"', ({ seed, pub, msg, sig }) => {
    const message = hexBytes(msg);
    expect(hexText(rawPublicKey(keyOf(seed)))).toBe(pub);
    expect(hexText(ed25519Signer(keyOf(seed))(message))).toBe(sig);
    expect(verifyEd25519(hexBytes(pub), message, hexBytes(sig))).toBe(true);
    const flipped = hexBytes(sig).with(0, (hexBytes(sig)[0] ?? 0) ^ 1);
    expect(verifyEd25519(hexBytes(pub), message, flipped)).toBe(false);
    expect(verifyEd25519(hexBytes(pub).slice(1), message, hexBytes(sig))).toBe(false);
    expect(verifyEd25519(hexBytes(pub), message, new Uint8Array(63))).toBe(false);
  });
});
