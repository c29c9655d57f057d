import path from 'node:path';
import { fileURLToPath } from 'node:url';
import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');

/** Rules that need the types: forgotten promises, holes in the types, and switches that miss a case. */
const typed = {
  '@typescript-eslint/no-floating-promises': 'error',
  '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: { attributes: false } }],
  '@typescript-eslint/await-thenable': 'error',
  '@typescript-eslint/require-await': 'off',
  '@typescript-eslint/no-explicit-any': 'error',
  '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'separate-type-imports', disallowTypeAnnotations: false }],
  '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
  '@typescript-eslint/only-throw-error': 'error',
  '@typescript-eslint/ban-ts-comment': ['error', { 'ts-expect-error': 'allow-with-description', 'ts-ignore': true, 'ts-nocheck': true }],
  '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true, allowBoolean: true, allowNullish: true }],
  '@typescript-eslint/no-non-null-assertion': 'error',
  '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_', ignoreRestSiblings: true }],
  // A cast that a receiver of anything makes needless says what is meant; methods here are plain functions without a `this`.
  '@typescript-eslint/no-unnecessary-type-assertion': 'off',
  '@typescript-eslint/unbound-method': 'off',
};

export default tseslint.config(
  { ignores: ['dist/**', 'node_modules/**', '**/*.json'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  {
    files: ['**/*.{ts,tsx}'],
    extends: [tseslint.configs.recommendedTypeChecked],
    languageOptions: {
      parserOptions: { tsconfigRootDir: root, project: ['shared-core', 'electron', 'renderer', 'tests'].map((area) => `${area}/tsconfig.json`) },
    },
    rules: { ...typed, eqeqeq: ['error', 'always', { null: 'ignore' }], 'no-eval': 'error', 'no-implied-eval': 'off', 'no-console': 'error' },
  },
  {
    files: ['renderer/**/*.{ts,tsx}'],
    extends: [reactHooks.configs.flat.recommended],
  },
  {
    // Faults of our own are noted on standard error.
    files: ['electron/**'],
    rules: { 'no-console': ['error', { allow: ['error'] }] },
  },
  {
    // What the person reads in a terminal is printed on purpose.
    files: ['electron/cli/**', 'electron/start/**', 'tests/**'],
    rules: { 'no-console': 'off' },
  },
  {
    files: ['**/*.{js,mjs}'],
    rules: { eqeqeq: ['error', 'always', { null: 'ignore' }], 'no-undef': 'off', 'no-unused-vars': 'error' },
  },
);
