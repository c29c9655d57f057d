import type { Refusal } from '../../shared-core/result/result.ts';

const REFUSED_BY_CODE: Readonly<Record<string, string>> = {
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EROFS: 'folder-read-only',
  EACCES: 'folder-read-only',
  EPERM: 'folder-read-only',
  ENOENT: 'folder-unreachable',
  ENOTDIR: 'folder-unreachable',
  ELOOP: 'folder-unreachable',
  ENAMETOOLONG: 'folder-unreachable',
  EIO: 'disk-fails',
};

/** What an error of the file system means to a person; an error of another sort is our bug and goes on. */
export function fileRefusal(error: unknown): { readonly ok: false; readonly refusal: Refusal } {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const known = REFUSED_BY_CODE[code];
  if (known === undefined) throw error;
  return { ok: false, refusal: { code: known, values: { why: error instanceof Error ? error.message : code } } };
}
