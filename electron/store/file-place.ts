import { statSync } from 'node:fs';

/** Says which file stands under a name: one that was moved away or replaced has another. */
export type FilePlace = string;

/**
 * The place of a file, or null where none can be reached under that name. An open database goes on writing into a file that
 * was taken from its folder, and what it then confirms is lost: so it is asked before and after.
 */
export function placeOf(file: string): FilePlace | null {
  try {
    const { dev, ino } = statSync(file, { bigint: true });
    return `${dev}/${ino}`;
  } catch {
    return null;
  }
}
