import { describe, expect, test } from 'vitest';
import { HOUSE_RULES } from './house-rules.ts';
import { projectSources, report } from './source.ts';

const sources = projectSources();

describe('the house keeps its own rules', () => {
  test('there is a house to look at', () => {
    expect(sources.filter(({ file }) => file.startsWith('shared-core/')).length).toBeGreaterThan(5);
  });

  test.each(Object.entries(HOUSE_RULES))('%s', (_name, rule) => {
    expect(report(rule(sources))).toBe('');
  });
});
