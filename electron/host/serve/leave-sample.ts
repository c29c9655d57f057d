import { existsSync, renameSync, rmSync } from 'node:fs';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import type { HostContext } from '../host-context.ts';
import { pushAllChanged } from '../push-changed.ts';
import { sampleFolder, unfinishedSample } from '../sample-folder.ts';

/** Leaves the sample: the household's own folder is opened again and the sample's folder is deleted. */
export function leaveSample(context: HostContext): Result<Record<string, never>> {
  if (!context.isSample()) return refuse('sample-not-open');
  const left = context.swap(context.home);
  if (!left.ok) return left;
  const folder = sampleFolder(context.home);
  // In one step out of the way, for deleting takes many: a sample deleted by half must not be opened at the next start.
  rmSync(unfinishedSample(context.home), { recursive: true, force: true });
  if (existsSync(folder)) renameSync(folder, unfinishedSample(context.home));
  rmSync(unfinishedSample(context.home), { recursive: true, force: true });
  pushAllChanged(context);
  return ok({});
}
