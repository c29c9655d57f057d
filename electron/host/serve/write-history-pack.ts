import { join, resolve } from 'node:path';
import { findCar } from '../../../shared-core/fleet/find-car.ts';
import { sealText } from '../../../shared-core/journal/seal-text.ts';
import { makeSeal } from '../../../shared-core/journal/seal.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { writePack } from '../../pack/write-pack.ts';
import { countEntries } from '../../store/journal-table.ts';
import { forgetSeal, noteSealGiven } from '../../store/seal-table.ts';
import { composeHistoryPack, previousSaid, type HistoryPack, type PackChoice } from '../compose-history-pack.ts';
import { fileRefusal } from '../file-refusal.ts';
import { makeFolder } from '../make-folder.ts';
import type { HostContext } from '../host-context.ts';

/** Writes a car's history pack into a folder; from then on what it seals can no longer be withdrawn. */
export async function writeHistoryPack(
  context: HostContext,
  request: PackChoice & { readonly car: string; readonly out: string | null },
): Promise<Result<{ path: string; name: string; files: number; bytes: number; seal: string; notes: string[] }>> {
  const household = context.household();
  const car = findCar(household.facts, request.car);
  if (!car.ok) return car;
  const said = previousSaid(household.facts, car.value, request);
  if (!said.ok) return said;
  const out = resolve(request.out ?? join(household.folder, 'packs'));
  try {
    makeFolder(out);
  } catch (error) {
    const refused = fileRefusal(error);
    return !refused.ok && refused.refusal.code === 'not-a-folder' ? refuse('pack-out-not-a-folder', { path: out }, ['out']) : refused;
  }
  const composed = await composeAtRest(context, request);
  if (!composed.ok) return composed;
  const { pack, head, summary } = composed.value;
  // Noted before the pack is there: whatever breaks off here, no entry that a pack holds can be withdrawn.
  const noted = noteSealGiven(household.store, head, context.world.now());
  const written = await writePack(pack, out);
  if (!written.ok) {
    if (noted) forgetSeal(household.store, head);
    return written;
  }
  const seal = sealText(makeSeal(head, household.key.fingerprint, household.key.sign));
  return ok({ path: written.value, name: pack.name, files: pack.files.length, bytes: pack.files.reduce((sum, file) => sum + file.size, 0), seal, notes: [...summary.earlier] });
}

/** Composing takes a while, and what is entered or withdrawn meanwhile would be in it by half: then it is composed again. */
export async function composeAtRest(context: HostContext, choice: PackChoice & { readonly car: string }): Promise<Result<HistoryPack>> {
  const household = context.household();
  for (;;) {
    const car = findCar(household.facts, choice.car);
    if (!car.ok) return car;
    const composed = await composeHistoryPack({ household, desk: context.papers }, car.value, context.world.today(), choice);
    if (!composed.ok || countEntries(household.store) === composed.value.head.treeSize) return composed;
  }
}
