import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const read = (file: string) => JSON.parse(readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8')) as Record<string, unknown>;

// Electron's security checklist, item 16 (seen): a version that is still cared for. Which ones are is not known offline; here it is one version, and the same everywhere.
test('Electron is one exact version in the list, the lock and what is installed', () => {
  const listed = (read('package.json')['devDependencies'] as Record<string, string>)['electron'] ?? '';
  const locked = (read('package-lock.json')['packages'] as Record<string, { version: string }>)['node_modules/electron']?.version;
  expect(listed).toMatch(/^\d+\.\d+\.\d+$/);
  expect([locked, read('node_modules/electron/package.json')['version']]).toEqual([listed, listed]);
});
