import { resolve } from 'node:path';
import { ok, type Result } from '../../../shared-core/result/result.ts';
import { checkPackAt } from '../../pack/check-pack.ts';
import { packCheckView, type PackCheckView } from '../../../shared-core/views/pack-check-view.ts';
import type { HostContext } from '../host-context.ts';

/** Checks a pack, as a ZIP or as the folder it was unpacked into. */
export async function checkHistoryPack(_context: HostContext, request: { readonly pack: string; readonly seal: string | null }): Promise<Result<PackCheckView>> {
  const report = await checkPackAt(resolve(request.pack), request.seal);
  return report.ok ? ok(packCheckView(report.value)) : report;
}
