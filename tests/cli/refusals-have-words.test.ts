import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { hasWords, sayRefusal } from '../../shared-core/result/words/say.ts';
import { EN } from '../../shared-core/result/words/en.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
/** A refusal by its code, or a schema's check that gives one. */
const CODE = /\b(?:refuse|refusedBy)\(\s*'([a-z][a-z0-9-]*)'/g;

const sources = ['shared-core', 'electron'].flatMap((area) =>
  readdirSync(join(ROOT, area), { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts')).map((name) => join(area, name)),
);
/** Where a table gives the refusal for a fault of disk or database. */
const TABLES = ['electron/store/store-refusal.ts', 'electron/host/file-refusal.ts'];
const inTables = TABLES.flatMap((file) => [...readFileSync(join(ROOT, file), 'utf8').matchAll(/^ {2}\w+: '([a-z-]+)'/gm)].map((found) => found[1] ?? ''));
const written = sources.flatMap((file) => [...readFileSync(join(ROOT, file), 'utf8').replace(/^\s*\*.*$/gm, '').matchAll(CODE)].map((found) => found[1] ?? ''));
const codes = [...new Set([...inTables, ...written])].sort();

describe('every refusal', () => {
  test('is found by its code in the sources', () => {
    expect(codes.length).toBeGreaterThan(60);
    expect(codes).toEqual(expect.arrayContaining(['store-locked', 'not-a-folder', 'unknown-car', 'text-empty']));
  });

  test('has its sentence', () => {
    expect(codes.filter((code) => !hasWords(code)), 'write the sentence into shared-core/result/words: what is wrong, and what to do').toEqual([]);
  });

  test('is said in sentences that end, without a place left unfilled', () => {
    for (const code of codes.filter(hasWords)) {
      expect(EN[code], code).toMatch(/[.?!]$|\{why\}$/);
      expect(sayRefusal({ code, values: {} }), code).not.toMatch(/\{\w+\}/);
    }
  });
});
