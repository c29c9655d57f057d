import { refuse } from '../../shared-core/result/result.ts';

const REFUSED_BY_CODE: Readonly<Record<string, string>> = {
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EFBIG: 'disk-full',
  EROFS: 'folder-read-only',
  EACCES: 'folder-read-only',
  EPERM: 'folder-read-only',
  ENOENT: 'folder-unreachable',
  ENOTDIR: 'not-a-folder',
  EEXIST: 'not-a-folder',
  EISDIR: 'not-a-file',
  ELOOP: 'folder-unreachable',
  ENAMETOOLONG: 'folder-unreachable',
  EIO: 'disk-fails',
};

/** What an error of the file system means to a person; an error of another sort is our bug and goes on. */
export function fileRefusal(error: unknown): ReturnType<typeof refuse> {
  if (!(error instanceof Error && 'syscall' in error && 'code' in error)) throw error;
  return refuse(REFUSED_BY_CODE[String(error.code)] ?? 'disk-fails', { why: error.message });
}
