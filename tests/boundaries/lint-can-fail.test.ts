import { ESLint } from 'eslint';
import { describe, expect, test, vi } from 'vitest';
import { ROOT } from './source.ts';

// In a single run, as the parser guesses from CI, it would read the file on the disk and not the snippet.
vi.stubEnv('TSESTREE_SINGLE_RUN', 'false');
const eslint = new ESLint({ cwd: ROOT, overrideConfigFile: `${ROOT}tests/eslint.config.js` });

/** The rules that a snippet breaks where it stands in for a file of ours, so that its types are known. */
async function broken(code: string, file: string): Promise<string[]> {
  const [result] = await eslint.lintText(code, { filePath: `${ROOT}${file}` });
  return (result?.messages ?? []).map(({ ruleId, message }) => ruleId ?? message);
}

const CORE = 'shared-core/result/result.ts';
const PAGE = 'renderer/app/main.tsx';

describe('the linter finds', () => {
  test.each([
    { rule: '@typescript-eslint/no-floating-promises', file: CORE, code: 'async function f(): Promise<void> {}\nf();' },
    { rule: '@typescript-eslint/no-misused-promises', file: CORE, code: 'declare const p: Promise<boolean>;\nexport const a = p ? 1 : 2;' },
    { rule: '@typescript-eslint/no-explicit-any', file: CORE, code: 'export const a: any = 1;' },
    { rule: '@typescript-eslint/no-unsafe-return', file: CORE, code: "export const f = (): string => JSON.parse('1');" },
    { rule: '@typescript-eslint/consistent-type-imports', file: CORE, code: "import { LocalDate } from '../calendar/local-date.ts';\nexport const f = (d: LocalDate) => d;" },
    { rule: '@typescript-eslint/switch-exhaustiveness-check', file: CORE, code: "export function f(u: 'km' | 'mi') {\n  switch (u) {\n    case 'km': return 1;\n  }\n  return 0;\n}" },
    { rule: '@typescript-eslint/only-throw-error', file: CORE, code: "export function f() { throw 'no'; }" },
    { rule: '@typescript-eslint/ban-ts-comment', file: CORE, code: '// @ts-ignore\nexport const a: string = 1;' },
    { rule: 'eqeqeq', file: CORE, code: "export const f = (a: string) => a == 'b';" },
    { rule: 'no-console', file: PAGE, code: "console.log('a');" },
    { rule: 'react-hooks/rules-of-hooks', file: PAGE, code: "import { useState } from 'react';\nexport function A({ b }: { b: boolean }) {\n  if (b) useState(1);\n  return null;\n}" },
    { rule: 'react-hooks/exhaustive-deps', file: PAGE, code: "import { useEffect } from 'react';\nexport function A({ b }: { b: () => void }) {\n  useEffect(() => b(), []);\n  return null;\n}" },
  ])('$rule', async ({ rule, file, code }) => {
    expect(await broken(code, file)).toContain(rule);
  });
});

test('the linter lets a plain file be', async () => {
  expect(await broken("export function f(u: 'km' | 'mi'): number {\n  return u === 'km' ? 1 : 2;\n}\n", CORE)).toEqual([]);
});
