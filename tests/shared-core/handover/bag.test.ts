import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bagInfoText, manifestText } from '../../../shared-core/handover/bag.ts';
import { infoValues, readManifest, tagLines } from '../../../shared-core/handover/bag-lines.ts';
import { manifestPath, pathInManifest } from '../../../shared-core/handover/manifest-path.ts';

const DIGEST = 'e7c22b994c59d9cf2b48e549b1e24666636045930d3da7c1acb299d1c3b7f931f94aae41edda2c2b207a36e10f8bcb8d45223e54878f5b316e7ce3b6bc019629';

describe('paths in manifests', () => {
  // Source: RFC 8493 section 2.1.3 (seen).
  test.each([
    { path: 'data/a%b', text: 'data/a%25b' },
    { path: 'data/a\nb', text: 'data/a%0Ab' },
    { path: 'data/x\ry', text: 'data/x%0Dy' },
    { path: 'data/file%0A1.txt', text: 'data/file%250A1.txt' },
    { path: 'data/é ~/ü', text: 'data/é ~/ü' },
  ])('$text', ({ path, text }) => {
    expect(manifestPath(path)).toBe(text);
    expect(pathInManifest(text)).toBe(path);
  });

  test('small digits are read too, other escapes are not', () => {
    expect(pathInManifest('a%0ab%0dc%7E')).toBe('a\nb\rc%7E');
  });

  test('any path comes back', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (path) => {
        expect(pathInManifest(manifestPath(path))).toBe(path);
      }),
    );
  });
});

describe('a manifest', () => {
  test('is sorted by bytes and in the form of sha512sum', () => {
    const files = ['data/\u{1f600}', 'data/\ufb33', 'data/b', 'data/B'].map((path) => ({ path, sha512: DIGEST }));
    expect(manifestText(files)).toBe(['data/B', 'data/b', 'data/\ufb33', 'data/\u{1f600}'].map((path) => `${DIGEST}  ${path}\n`).join(''));
  });

  test('lists no path twice', () => {
    expect(() => manifestText([{ path: 'data/a', sha512: DIGEST }, { path: 'data/a', sha512: DIGEST }])).toThrow(/once/);
  });

  // Source: RFC 8493 section 2.1.3 and its grammar (seen).
  test.each([
    { case: 'two spaces', line: `${DIGEST}  data/a`, path: 'data/a', starred: false },
    { case: 'one space, capital digits', line: `${DIGEST.toUpperCase()} data/a`, path: 'data/a', starred: false },
    { case: 'tabs', line: `${DIGEST}\t\tdata/a b`, path: 'data/a b', starred: false },
    { case: 'the star of md5sum', line: `${DIGEST} *data/a`, path: 'data/a', starred: true },
  ])('is read: $case', ({ line, path, starred }) => {
    expect(readManifest(`${line}\n`, 128)).toEqual({ lines: [{ line: 1, digest: DIGEST, path, starred }], unreadable: [] });
  });

  test.each([
    { case: 'a short digest', line: `${DIGEST.slice(1)}  data/a` },
    { case: 'no path', line: DIGEST },
    { case: 'no space', line: `${DIGEST}data/a` },
    { case: 'an escaped line of coreutils', line: `\\${DIGEST}  data/a\\nb` },
    { case: 'a line of nothing', line: '' },
    { case: 'a leading space', line: ` ${DIGEST}  data/a` },
  ])('is not read: $case', ({ line }) => {
    expect(readManifest(`${DIGEST}  data/b\n${line}\n`, 128).unreadable).toEqual([2]);
  });

  test('lines end in any way', () => {
    expect(tagLines('a\rb\r\nc\nd')).toEqual(['a', 'b', 'c', 'd']);
    expect(tagLines('a\n')).toEqual(['a']);
  });
});

describe('bag-info.txt', () => {
  test('counts bytes and files', () => {
    expect(bagInfoText([['Bagging-Date', '2026-11-25']], [{ size: 6 }])).toBe('Bagging-Date: 2026-11-25\nPayload-Oxum: 6.1\n');
  });

  test.each([[' Label', 'x'], ['Label ', 'x'], ['La:bel', 'x'], ['', 'x'], ['Label', 'x\ny']] as const)('takes no %j: %j', (label, value) => {
    expect(() => bagInfoText([[label, value]], [])).toThrow(/Bug/);
  });

  // Source: RFC 8493 section 2.2.2 (seen): labels alike in either case, may be repeated, values may be folded.
  test('is read with folds, repeats and either case', () => {
    const text = 'Note: one\r\n  two\nnote: three\nOther: four\nNote:five\n';
    expect(infoValues(text, 'NOTE')).toEqual(['one two', 'three']);
  });
});
