import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CHECK_WORDS } from '../../../shared-core/result/words/en-check.ts';
import { hasWords } from '../../../shared-core/result/words/say.ts';

/** Every key and refusal code that the source of checking and writing a pack names. */
function keysInSource(): string[] {
  const folders = ['shared-core/handover', 'electron/pack', 'shared-core/journal'];
  const sources = folders.flatMap((folder) => {
    const url = new URL(`../../../${folder}/`, import.meta.url);
    return readdirSync(url).map((file) => readFileSync(new URL(file, url), 'utf8'));
  });
  return sources.flatMap((source) => [
    ...[...source.matchAll(/'((?:fault|warning|note)-[a-z0-9-]+)'/g)].map((match) => match[1] ?? ''),
    ...[...source.matchAll(/refuse\((?:[^'()]*'ENOENT' \? )?'([a-z-]+)'(?: : '([a-z-]+)')?/g)].flatMap((match) => [match[1] ?? '', match[2] ?? '']),
  ]).filter((key) => key !== '');
}

describe('the sentences of checking', () => {
  const keys = [...new Set(keysInSource())];

  test('are there for every key that the source names', () => {
    expect(keys.length).toBeGreaterThan(60);
    expect(keys.filter((key) => !hasWords(key))).toEqual([]);
  });

  test('are each used', () => {
    expect(Object.keys(CHECK_WORDS).filter((key) => !keys.includes(key))).toEqual([]);
  });
});
