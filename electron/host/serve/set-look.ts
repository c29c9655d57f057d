import type { Look } from '../../../shared-core/contract/look.ts';
import { ok, type Result } from '../../../shared-core/result/result.ts';
import { fileRefusal } from '../file-refusal.ts';
import type { HostContext } from '../host-context.ts';
import { writeLook } from '../kept-look.ts';
import { pushAllChanged } from '../push-changed.ts';

/** Keeps how the screens are to look in the household's own folder, whether or not the sample is open. */
export function setLook(context: HostContext, { look }: { readonly look: Look }): Result<{ readonly look: Look }> {
  try {
    writeLook(context.home, look);
  } catch (error) {
    return fileRefusal(error);
  }
  pushAllChanged(context);
  return ok({ look });
}
