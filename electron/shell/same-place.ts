import { realpathSync } from 'node:fs';
import path from 'node:path';

/** Whether two names are of one folder, whatever links lead to it. */
export function samePlace(one: string, other: string): boolean {
  return placed(one) === placed(other);
}

function placed(name: string): string {
  try {
    return realpathSync.native(name);
  } catch {
    return path.resolve(name);
  }
}
