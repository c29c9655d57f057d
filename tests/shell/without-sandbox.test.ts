import { expect, test } from 'vitest';
import { startedWithoutSandbox } from '../../electron/shell/without-sandbox.ts';

test.each([
  { isPackaged: true, given: 'no-sandbox', refused: true },
  { isPackaged: true, given: '', refused: false },
  { isPackaged: false, given: 'no-sandbox', refused: false },
])('packaged $isPackaged, switch "$given": refused $refused', ({ isPackaged, given, refused }) => {
  expect(startedWithoutSandbox({ isPackaged, commandLine: { hasSwitch: (name: string) => name === given } as never })).toBe(refused);
});
