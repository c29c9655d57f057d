import { cpSync, existsSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { refuse, ok, type Result } from '../../../shared-core/result/result.ts';
import { copyDatabase } from '../../store/back-up.ts';
import { examineFolder } from '../examine-folder.ts';
import { failure } from '../failure.ts';
import { fileRefusal } from '../file-refusal.ts';
import type { HostContext } from '../host-context.ts';
import { databaseFile } from '../household-folder.ts';

/** Copies the whole household (database, papers, key) into a new folder under `backups`, and checks the copy by replay. */
export function makeBackup(context: HostContext): Result<{ folder: string; entries: number }> {
  const household = context.household();
  const made = newFolder(join(household.folder, 'backups', context.world.now().replace(/[:.]/g, '-')));
  if (!made.ok) return made;
  const folder = made.value;
  try {
    copyDatabase(household.store, databaseFile(folder));
    cpSync(join(household.folder, 'papers'), join(folder, 'papers'), { recursive: true, errorOnExist: true, filter: (from) => !from.endsWith('.part') });
    cpSync(join(household.folder, 'key'), join(folder, 'key'));
  } catch (error) {
    rmSync(folder, { recursive: true, force: true });
    return failure(error, 'backup.make', databaseFile(folder));
  }
  const examined = examineFolder(folder);
  const fault = examined.ok ? examined.value.faults[0] : { where: 'database', what: examined.refusal.code };
  if (examined.ok && fault === undefined) return ok({ folder, entries: examined.value.entries });
  rmSync(folder, { recursive: true, force: true });
  return refuse('backup-not-sound', { where: fault?.where ?? '', what: fault?.what ?? '' });
}

/** A folder that was not there: a copy made in the same instant keeps its own. */
function newFolder(wanted: string): Result<string> {
  let folder = wanted;
  for (let next = 2; existsSync(folder); next += 1) folder = `${wanted}-${next}`;
  try {
    mkdirSync(folder, { mode: 0o700 });
    return ok(folder);
  } catch (error) {
    return fileRefusal(error);
  }
}
