import { describe, expect, test } from 'vitest';
import { sha256, sha512 } from '../../../electron/host/node-digests.ts';
import { verifyBag } from '../../../shared-core/handover/bag-verify.ts';
import { hexText } from '../../../shared-core/journal/hex-text.ts';
import { foundIn } from './pack-fixture.ts';

const HELLO = 'e7c22b994c59d9cf2b48e549b1e24666636045930d3da7c1acb299d1c3b7f931f94aae41edda2c2b207a36e10f8bcb8d45223e54878f5b316e7ce3b6bc019629';
const HELLO_256 = '5891b5b522d5df086d0ff0b110fbd9d21bb4fc7163af34d08286a2e846f6be03';
const DECLARATION = 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n';
const OTHER = '0'.repeat(128);

type Files = Readonly<Record<string, string | null>>;

/** The small golden bag (digests seen and recomputed), with files changed, added, or taken away by null. */
function bag(change: Files = {}) {
  const whole: Files = { 'bagit.txt': DECLARATION, 'manifest-sha512.txt': `${HELLO}  data/hello.txt\n`, 'data/hello.txt': 'hello\n', ...change };
  const files = Object.entries(whole).flatMap(([path, text]) => (text === null ? [] : [[path, Buffer.from(text, 'utf8')] as const]));
  return foundIn(new Map(files));
}

function digestOf(text: string): string {
  return hexText(sha512(Buffer.from(text)));
}

describe('known-good bags', () => {
  // Source: RFC 8493 (seen) and the conformance suite's valid bags of version 1.0 (seen as a tree), rebuilt here.
  test.each<{ case: string; change: Files }>([
    { case: 'basic', change: {} },
    { case: 'with a tag manifest', change: { 'tagmanifest-sha512.txt': `${digestOf(DECLARATION)}  bagit.txt\n${digestOf(`${HELLO}  data/hello.txt\n`)}  manifest-sha512.txt\n` } },
    { case: 'with two manifests', change: { 'manifest-sha256.txt': `${HELLO_256}  data/hello.txt\n` } },
    { case: 'with capital digits and one space', change: { 'manifest-sha512.txt': `${HELLO.toUpperCase()} data/hello.txt\n` } },
    { case: 'with lines that end in CR', change: { 'bagit.txt': DECLARATION.replaceAll('\n', '\r') } },
    { case: 'with a manifest of CRLF lines', change: { 'manifest-sha512.txt': `${HELLO}  data/hello.txt\r\n` } },
    { case: 'with its payload counted', change: { 'bag-info.txt': 'Payload-Oxum: 6.1\n' } },
    { case: 'with repeated labels', change: { 'bag-info.txt': 'Note: a\nNote: b\nPayload-Oxum: 6.1\n' } },
    { case: 'with an unlisted tag file', change: { 'extra.txt': 'extra' } },
    { case: 'with an encoded name', change: { 'manifest-sha512.txt': `${HELLO}  data/a%25b\n`, 'data/hello.txt': null, 'data/a%b': 'hello\n' } },
    { case: 'with nothing in it', change: { 'manifest-sha512.txt': '', 'data/hello.txt': null } },
  ])('$case', ({ change }) => {
    expect(verifyBag(bag(change))).toEqual({ faults: [], warnings: [] });
  });
});

describe('known-bad bags', () => {
  const outside = (path: string) => ({ 'manifest-sha512.txt': `${HELLO}  data/hello.txt\n${HELLO}  ${path}\n` });
  // Source: the conformance suite's invalid bags (seen as a tree), rebuilt here in version 1.0; the last ones are our own.
  test.each<{ case: string; change: Files; code: string; path: string }>([
    { case: 'missing bagit.txt', change: { 'bagit.txt': null }, code: 'missing', path: 'bagit.txt' },
    { case: 'declaration without encoding', change: { 'bagit.txt': 'BagIt-Version: 1.0\n' }, code: 'not-a-pack', path: 'bagit.txt' },
    { case: 'byte order mark', change: { 'bagit.txt': `\ufeff${DECLARATION}` }, code: 'not-a-pack', path: 'bagit.txt' },
    { case: 'invalid version number', change: { 'bagit.txt': DECLARATION.replace('1.0', '.97') }, code: 'not-a-pack', path: 'bagit.txt' },
    { case: 'white space before the colon', change: { 'bagit.txt': DECLARATION.replace(':', ' :') }, code: 'not-a-pack', path: 'bagit.txt' },
    { case: 'white space after the version', change: { 'bagit.txt': DECLARATION.replace('1.0', '1.0 ') }, code: 'not-a-pack', path: 'bagit.txt' },
    { case: 'corrupt data file', change: { 'data/hello.txt': 'hellO\n' }, code: 'changed', path: 'data/hello.txt' },
    { case: 'missing data file', change: { 'data/hello.txt': null }, code: 'missing', path: 'data/hello.txt' },
    { case: 'extra file', change: { 'data/extra.txt': 'extra' }, code: 'added', path: 'data/extra.txt' },
    { case: 'renamed file', change: { 'data/hello.txt': null, 'data/hallo.txt': 'hello\n' }, code: 'renamed', path: 'data/hello.txt' },
    { case: 'corrupt tag file', change: { 'tagmanifest-sha512.txt': `${OTHER}  bagit.txt\n${digestOf(`${HELLO}  data/hello.txt\n`)}  manifest-sha512.txt\n` }, code: 'changed', path: 'bagit.txt' },
    { case: 'listed bag-info.txt missing', change: { 'tagmanifest-sha512.txt': `${OTHER}  bag-info.txt\n${digestOf(`${HELLO}  data/hello.txt\n`)}  manifest-sha512.txt\n` }, code: 'missing', path: 'bag-info.txt' },
    { case: 'tag manifest that lists no payload manifest', change: { 'tagmanifest-sha512.txt': `${digestOf(DECLARATION)}  bagit.txt\n` }, code: 'not-a-pack', path: 'tagmanifest-sha512.txt' },
    { case: 'path with dots', change: outside('../../../README.md'), code: 'not-a-pack', path: 'manifest-sha512.txt' },
    { case: 'path with escaped dots', change: outside('\\.\\./README.md'), code: 'not-a-pack', path: 'manifest-sha512.txt' },
    { case: 'absolute path', change: outside('/abs/foo'), code: 'not-a-pack', path: 'manifest-sha512.txt' },
    { case: 'home folder', change: outside('~/foo'), code: 'not-a-pack', path: 'manifest-sha512.txt' },
    { case: 'another home folder', change: outside('~root/foo'), code: 'not-a-pack', path: 'manifest-sha512.txt' },
    { case: 'drive', change: outside('C:\\Windows\\x'), code: 'not-a-pack', path: 'manifest-sha512.txt' },
    { case: 'network share', change: outside('\\\\?\\UNC\\server\\x'), code: 'not-a-pack', path: 'manifest-sha512.txt' },
    { case: 'path outside data', change: outside('bagit.txt'), code: 'not-a-pack', path: 'manifest-sha512.txt' },
    { case: 'path with a leading dot', change: outside('./data/hello.txt'), code: 'not-a-pack', path: 'manifest-sha512.txt' },
    { case: 'file listed twice with different digests', change: { 'manifest-sha512.txt': `${HELLO}  data/hello.txt\n${OTHER}  data/hello.txt\n` }, code: 'not-a-pack', path: 'manifest-sha512.txt' },
    { case: 'file listed twice with the same digest', change: { 'manifest-sha512.txt': `${HELLO}  data/hello.txt\n${HELLO}  data/hello.txt\n` }, code: 'not-a-pack', path: 'manifest-sha512.txt' },
    { case: 'one manifest leaves a file out', change: { 'manifest-sha256.txt': '' }, code: 'added', path: 'data/hello.txt' },
    { case: 'no manifest', change: { 'manifest-sha512.txt': null }, code: 'missing', path: 'manifest-sha512.txt' },
    { case: 'a line that is none', change: { 'manifest-sha512.txt': `${HELLO}  data/hello.txt\nhello\n` }, code: 'not-a-pack', path: 'manifest-sha512.txt' },
    { case: 'byte order mark in a manifest', change: { 'manifest-sha512.txt': `\ufeff${HELLO}  data/hello.txt\n` }, code: 'not-a-pack', path: 'manifest-sha512.txt' },
    { case: 'payload miscounted', change: { 'bag-info.txt': 'Payload-Oxum: 7.1\n' }, code: 'changed', path: 'bag-info.txt' },
    { case: 'payload counted twice', change: { 'bag-info.txt': 'Payload-Oxum: 6.1\nPayload-Oxum: 6.1\n' }, code: 'changed', path: 'bag-info.txt' },
    { case: 'emptied file', change: { 'data/hello.txt': '' }, code: 'truncated', path: 'data/hello.txt' },
    { case: 'shortened file', change: { 'data/hello.txt': 'hell', 'bag-info.txt': 'Payload-Oxum: 6.1\n' }, code: 'truncated', path: 'data/hello.txt' },
  ])('$case: $code', ({ change, code, path }) => {
    expect(verifyBag(bag(change)).faults).toContainEqual(expect.objectContaining({ code, path }));
  });

  test('each fault is named once, and nothing else with it', () => {
    expect(verifyBag(bag({ 'data/hello.txt': 'hellO\n', 'manifest-sha256.txt': `${HELLO_256}  data/hello.txt\n` })).faults).toHaveLength(1);
    expect(verifyBag(bag({ 'data/hello.txt': null, 'data/hallo.txt': 'hello\n' })).faults).toHaveLength(1);
  });
});

describe('bags to be warned of', () => {
  // Source: the conformance suite's warning bags (seen as a tree), rebuilt here.
  test.each<{ case: string; change: Files; key: string }>([
    { case: 'made with md5sum-like tools', change: { 'manifest-sha512.txt': `${HELLO} *data/hello.txt\n` }, key: 'warning-starred-line' },
    { case: 'names that differ in case only', change: { 'manifest-sha512.txt': `${HELLO}  data/HELLO.txt\n${HELLO}  data/hello.txt\n`, 'data/HELLO.txt': 'hello\n' }, key: 'warning-names-alike' },
    { case: 'a system file', change: { 'manifest-sha512.txt': `${HELLO}  data/Thumbs.db\n${HELLO}  data/hello.txt\n`, 'data/Thumbs.db': 'hello\n' }, key: 'warning-system-file' },
    { case: 'a digest that is not known here', change: { 'manifest-md5.txt': 'b1946ac92492d2347c6235b4d2611184  data/hello.txt\n' }, key: 'warning-unknown-digest' },
    { case: 'a list of files to fetch', change: { 'fetch.txt': '' }, key: 'warning-fetch-file' },
  ])('$case', ({ change, key }) => {
    const report = verifyBag(bag(change));
    expect(report.faults).toEqual([]);
    expect(report.warnings.map((warning) => warning.key)).toEqual([key]);
  });

  test('the golden digests are those of the host', () => {
    expect(digestOf('hello\n')).toBe(HELLO);
    expect(hexText(sha256(Buffer.from('hello\n')))).toBe(HELLO_256);
  });
});
