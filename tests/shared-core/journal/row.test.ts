import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sha256 } from '../../../electron/host/node-digests.ts';
import { canonicalJson, type Json } from '../../../shared-core/journal/canonical-json.ts';
import { composeRow, type RowParts } from '../../../shared-core/journal/compose-row.ts';
import { fieldAgrees, fieldDigest } from '../../../shared-core/journal/field-digest.ts';
import { hexText } from '../../../shared-core/journal/hex-text.ts';
import { NO_ROW_BEFORE, instantSchema, rowHash, rowSchema, rowText } from '../../../shared-core/journal/row.ts';

const SALTS = ['00112233445566778899aabbccddeeff', 'ffeeddccbbaa99887766554433221100'] as const;
const anyJson = fc.jsonValue() as fc.Arbitrary<Json>;
const PARTS: RowParts = {
  seq: 0,
  at: '2026-11-25T09:00:00.000Z',
  kind: 'reading-entered',
  version: 1,
  subject: 'car-pip',
  values: { value: 38250, note: 'dash' },
  salts: { value: SALTS[0], note: SALTS[1] },
  prev: null,
};

describe('a row', () => {
  test('is frozen: text and hash of version 1 never change', () => {
    const row = composeRow(PARTS, sha256);
    // Source: digests and hash taken with coreutils (printf of the bytes, through sha256sum).
    expect(row.fields).toEqual({
      value: '124f250fba7ddad6e1db5ca1cfc409ce48b8a08232b68a9f825fff0eddbda1c8',
      note: '84a7c260c134165eea6b0f2bbdb572523f81449a92de3dfb28c88fcfcabf9779',
    });
    expect(rowText(row)).toBe(
      `{"at":"2026-11-25T09:00:00.000Z","fields":{"note":"${row.fields['note']}","value":"${row.fields['value']}"},` +
        `"kind":"reading-entered","prev":"${NO_ROW_BEFORE}","seq":0,"subject":"car-pip","version":1}`,
    );
    expect(rowHash(row, sha256)).toBe('bb5c7d188fc5ae760b18f8f33b1327f4e9e20e518fa2649a93cc82f1970a1ddf');
  });

  test('shows a value to be the one it was made with, and no other', () => {
    fc.assert(
      fc.property(anyJson, anyJson, (value, other) => {
        const row = composeRow({ ...PARTS, values: { value }, salts: { value: SALTS[0] } }, sha256);
        const digest = row.fields['value'] ?? '';
        expect(fieldAgrees({ value, salt: SALTS[0] }, digest, sha256)).toBe(true);
        expect(fieldAgrees({ value, salt: SALTS[1] }, digest, sha256)).toBe(false);
        if (canonicalJson(value) !== canonicalJson(other)) expect(fieldAgrees({ value: other, salt: SALTS[0] }, digest, sha256)).toBe(false);
      }),
    );
  });

  test('digest is of salt, then text', () => {
    const bytes = Buffer.concat([Buffer.from(SALTS[0], 'hex'), Buffer.from('{"a":"é"}', 'utf8')]);
    expect(fieldDigest({ a: 'é' }, SALTS[0], sha256)).toBe(hexText(sha256(bytes)));
  });

  test.each<{ case: string; parts: Partial<RowParts> }>([
    { case: 'a salt is missing', parts: { salts: { value: SALTS[0] } } },
    { case: 'a salt serves two values', parts: { salts: { value: SALTS[0], note: SALTS[0] } } },
    { case: 'a salt is short', parts: { salts: { value: '00', note: SALTS[1] } } },
    { case: 'the first row follows another', parts: { prev: NO_ROW_BEFORE } },
    { case: 'a later row follows none', parts: { seq: 1 } },
    { case: 'the moment does not exist', parts: { at: '2026-02-30T09:00:00.000Z' } },
    { case: 'the kind is no name', parts: { kind: 'Reading Entered' } },
    { case: 'a value has no JSON', parts: { values: { value: Number.NaN, note: 'dash' } } },
  ])('is not composed where $case', ({ parts }) => {
    expect(() => composeRow({ ...PARTS, ...parts }, sha256)).toThrow();
  });

  test.each([
    ['2026-11-25T09:00:00.000Z', true],
    ['2026-11-25T09:00:00Z', false],
    ['2026-11-25T09:00:00.000+00:00', false],
    ['2026-11-25T24:00:00.000Z', false],
    ['2025-02-29T09:00:00.000Z', false],
  ])('moment %s: %s', (text, taken) => {
    expect(instantSchema.safeParse(text).success).toBe(taken);
  });

  test('takes nothing that its text would not carry', () => {
    expect(rowSchema.safeParse({ ...composeRow(PARTS, sha256), extra: 1 }).success).toBe(false);
  });
});
