import { cpSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { refuse, ok, type Result } from '../../../shared-core/result/result.ts';
import { copyDatabase } from '../../store/back-up.ts';
import { examineFolder } from '../examine-folder.ts';
import { fileRefusal } from '../file-refusal.ts';
import type { HostContext } from '../host-context.ts';
import { databaseFile } from '../household-folder.ts';

/** Copies the whole household (database, papers, key) into a new folder under `backups`, and checks the copy by replay. */
export function makeBackup(context: HostContext): Result<{ folder: string; entries: number }> {
  const household = context.household();
  const folder = join(household.folder, 'backups', context.world.now().replace(/[:.]/g, '-'));
  try {
    mkdirSync(folder, { mode: 0o700 });
    copyDatabase(household.store, databaseFile(folder));
    cpSync(join(household.folder, 'papers'), join(folder, 'papers'), { recursive: true, errorOnExist: true, filter: (from) => !from.endsWith('.part') });
    cpSync(join(household.folder, 'key'), join(folder, 'key'));
  } catch (error) {
    rmSync(folder, { recursive: true, force: true });
    return fileRefusal(error);
  }
  const examined = examineFolder(folder);
  const [fault] = examined.faults;
  if (fault === undefined) return ok({ folder, entries: examined.entries });
  rmSync(folder, { recursive: true, force: true });
  return refuse('backup-not-sound', { where: fault.where, what: fault.what });
}
