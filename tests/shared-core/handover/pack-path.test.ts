import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { packPathFault, pathLikeness, safeFileName } from '../../../shared-core/handover/pack-path.ts';

describe('paths of a pack', () => {
  // Source: RFC 8493 section 5.1 (seen); names of the 2018 disclosure and of Windows (list from memory).
  test.each([
    ['../evil', 'step'],
    ['a/../../evil', 'step'],
    ['..\\evil', 'backslash'],
    ['/etc/x', 'absolute'],
    ['//srv/x', 'absolute'],
    ['\\\\srv\\share\\x', 'backslash'],
    ['\\\\?\\UNC\\server', 'backslash'],
    ['C:\\x', 'backslash'],
    ['C:x', 'drive'],
    ['~/x', 'home'],
    ['~root/x', 'home'],
    ['', 'empty'],
    ['.', 'step'],
    ['a/./b', 'step'],
    ['a//b', 'step'],
    ['a/', 'step'],
    ['a\u0000b', 'control-character'],
    ['a\nb', 'control-character'],
    ['a\u0085b', 'control-character'],
    ['a\ud800', 'surrogate'],
    ['data/CON', 'reserved'],
    ['data/nul.txt', 'reserved'],
    ['com1/x', 'reserved'],
    ['data/a.', 'end'],
    ['data/a ', 'end'],
    ['data/a:b', 'character'],
    ['data/what?', 'character'],
    [`data/${'é'.repeat(98)}`, 'too-long'],
  ])('%j: %s', (path, fault) => {
    expect(packPathFault(path)).toBe(fault);
  });

  test.each(['data/a.txt', 'data/é/ü b', 'data/console.txt', '.hidden', 'a..b', `data/${'é'.repeat(97)}`])('%j is safe', (path) => {
    expect(packPathFault(path)).toBeNull();
  });

  test('alike are paths that some system takes for one', () => {
    expect(pathLikeness('data/HELLO.txt')).toBe(pathLikeness('data/hello.txt'));
    expect(pathLikeness('N\u00fa\u00f1ez')).toBe(pathLikeness('Nu\u0301n\u0303ez'));
    expect(pathLikeness('a')).not.toBe(pathLikeness('b'));
  });
});

describe('file names made from any text', () => {
  test.each([
    ['../Invoice 3/4.pdf', 'Invoice-3-4.pdf'],
    ['  Öl & Filter.PDF ', 'Öl-Filter.PDF'],
    ['con.txt', 'paper-con.txt'],
    ['..', 'paper'],
    ['\u0000\u202e', 'paper'],
    ['a'.repeat(90), 'a'.repeat(60)],
  ])('%j becomes %j', (text, name) => {
    expect(safeFileName(text, 60, 'paper')).toBe(name);
  });

  test('are always safe, and the same when made again', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 120 }), (text) => {
        const name = safeFileName(text, 60, 'paper');
        expect(packPathFault(name)).toBeNull();
        expect(name).not.toContain('/');
        expect(safeFileName(name, 80, 'paper')).toBe(name);
      }),
      { numRuns: 2000 },
    );
  });
});
