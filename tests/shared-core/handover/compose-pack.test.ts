import { describe, expect, test } from 'vitest';
import { checkNote } from '../../../shared-core/handover/check-note.ts';
import { composePack, MOST_BYTES, type PackInput } from '../../../shared-core/handover/compose-pack.ts';
import { textFile, type PackFile } from '../../../shared-core/handover/pack-files.ts';
import { publicKeyText } from '../../../shared-core/handover/public-key-text.ts';
import { base64Text } from '../../../shared-core/journal/base64-text.ts';
import { parseSeal } from '../../../shared-core/journal/seal-text.ts';
import fc from 'fast-check';
import { bytesOf, DIGESTS, householdKey, journal, pipPack, sealOf } from './pack-fixture.ts';

describe('a composed pack', () => {
  const pack = pipPack();

  test('holds its files sorted by the bytes of their paths', () => {
    expect(pack.files.map((file) => file.path)).toEqual([
      'bag-info.txt', 'bagit.txt', 'data/empty.csv', 'data/history.json', 'data/history.pdf', 'data/how-to-check.txt', 'data/journal/household-key.pem',
      'data/journal/rows.json', 'data/journal/seal.json', 'data/journal/seal.txt', 'data/papers/receipt.jpg', ...['history', 'rows', 'seal', 'signed-contents'].map((name) => `data/schema/${name}.schema.json`), 'manifest-sha512.txt',
      'signed-contents.json', 'signed-contents.sig', 'tagmanifest-sha512.txt',
    ]);
  });

  test('says when it was made, how much it holds, and that a sample proves nothing', () => {
    const files = bytesOf(pack);
    const payload = [...files].filter(([path]) => path.startsWith('data/'));
    const bytes = payload.reduce((sum, [, content]) => sum + content.length, 0);
    expect(files.get('bag-info.txt')?.toString()).toBe(`Bagging-Date: 2026-11-25\nExternal-Identifier: pip-2026-11-25\nPayload-Oxum: ${bytes}.${payload.length}\n`);
    const sample = bytesOf(pipPack({ sample: true }));
    expect(sample.get('bag-info.txt')?.toString()).toContain('proves nothing');
    expect(sample.get('data/how-to-check.txt')?.toString()).toMatch(/^This pack shows an invented household/);
  });

  test('holds its seal as text that can be compared', () => {
    expect(parseSeal(bytesOf(pack).get('data/journal/seal.txt')?.toString() ?? '')).toEqual({ ok: true, value: sealOf(journal()) });
  });

  test('its note names only files that are there', () => {
    const named = checkNote(false).match(/[\w/*.-]+\.(?:txt|json|pem|sig)/g) ?? [];
    const paths = [...bytesOf(pack).keys()];
    const isThere = (name: string) => {
      const [before = '', after = ''] = name.split('*');
      return name.includes('*') ? paths.some((path) => path.startsWith(before) && path.endsWith(after)) : paths.includes(name);
    };
    expect(named.length).toBeGreaterThan(8);
    expect(named).toContain('data/schema/*.schema.json');
    expect([...new Set(named)].filter((name) => !isThere(name))).toEqual([]);
  });

  test('is refused where a plain ZIP cannot hold it', () => {
    const huge: PackFile = { path: 'data/huge.bin', size: MOST_BYTES, sha256: '', sha512: '0'.repeat(128), content: { kind: 'source', source: 'x', crc32: 0 } };
    expect(() => pipPack({ files: [huge] })).toThrow('pack-too-large');
  });

  const file = (path: string) => textFile(path, 'x', DIGESTS);
  test.each<{ case: string; change: (input: PackInput) => PackInput }>([
    { case: 'a file outside data', change: (input) => ({ ...input, files: [...input.files, file('extra.txt')] }) },
    { case: 'a path that leads elsewhere', change: (input) => ({ ...input, files: [...input.files, file('data/../x')] }) },
    { case: 'a path twice', change: (input) => ({ ...input, files: [...input.files, file('data/history.pdf')] }) },
    { case: 'paths that differ in case only', change: (input) => ({ ...input, files: [...input.files, file('data/HISTORY.pdf')] }) },
    { case: 'a name with a folder in it', change: (input) => ({ ...input, name: 'a/b' }) },
    { case: 'rows out of order', change: (input) => ({ ...input, entries: [...input.entries].reverse() }) },
    { case: 'a paper without a file', change: (input) => ({ ...input, papers: [{ path: 'data/papers/none.pdf', sha256: '0'.repeat(64), redactedFrom: null }] }) },
  ])('is never made with $case', ({ change }) => {
    expect(() => pipPack({ change })).toThrow(/Bug/);
  });

  test('answers the refusal as a value', () => {
    const huge: PackFile = { path: 'data/huge.bin', size: MOST_BYTES, sha256: '', sha512: '0'.repeat(128), content: { kind: 'source', source: 'x', crc32: 0 } };
    let asked: PackInput | null = null;
    pipPack({ change: (input) => (asked = input) });
    const input = asked as PackInput | null;
    if (input === null) throw new Error('no input');
    expect(composePack({ ...input, files: [...input.files, huge] }, DIGESTS, householdKey().sign)).toMatchObject({ ok: false, refusal: { code: 'pack-too-large' } });
  });
});

describe('the public key as text', () => {
  test('base 64 is the platform’s', () => {
    fc.assert(
      fc.property(fc.uint8Array(), (bytes) => {
        expect(base64Text(bytes)).toBe(Buffer.from(bytes).toString('base64'));
      }),
    );
  });

  test('is a PEM of one line', () => {
    expect(publicKeyText(householdKey().publicKey)).toMatch(/^-----BEGIN PUBLIC KEY-----\n[A-Za-z0-9+/]{59}=\n-----END PUBLIC KEY-----\n$/);
  });
});
