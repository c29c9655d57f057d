import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { placeOf } from '../store/file-place.ts';
import type { HostContext } from './host-context.ts';
import { databaseFile } from './household-folder.ts';
import { pushAllChanged } from './push-changed.ts';

/**
 * Makes sure that the open database is the one in the household's folder. A folder that has vanished is refused until it is
 * back; one that was put back from a copy is opened anew; a sample that another window has left is left here too.
 */
export function returnToPlace(context: HostContext): Result<null> {
  const { folder, place } = context.household();
  const now = placeOf(databaseFile(folder));
  if (now === place) return ok(null);
  if (now === null && !context.isSample()) return refuse('folder-unreachable', { why: folder });
  const opened = context.swap(now === null ? context.home : folder);
  if (opened.ok) pushAllChanged(context);
  return opened;
}
