import { findHousehold } from '../../../shared-core/fleet/find-car.ts';
import { hexText } from '../../../shared-core/journal/hex-text.ts';
import { merkleTree, treeRoot } from '../../../shared-core/journal/merkle-tree.ts';
import { sealText } from '../../../shared-core/journal/seal-text.ts';
import { makeSeal, type JournalHead } from '../../../shared-core/journal/seal.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { ok, type Result } from '../../../shared-core/result/result.ts';
import { sealProves, sealProvesNot, type GivenSeal, type SealView } from '../../../shared-core/views/seal-view.ts';
import { readHashes } from '../../store/journal-table.ts';
import { noteSealGiven, sealsNoted } from '../../store/seal-table.ts';
import type { HostContext } from '../host-context.ts';
import type { HouseholdFolder } from '../household-folder.ts';
import { sha256 } from '../node-digests.ts';
import { sealCode } from '../seal-code.ts';

/** The head of the journal and the seals that were given; nothing is given by looking. */
export function showSeal(context: HostContext): Result<SealView> {
  const household = context.household();
  const started = findHousehold(household.facts);
  if (!started.ok) return started;
  return household.store.transaction(() => {
    const { treeSize, root } = headOf(household);
    const given = sealsNoted(household.store).map((one) => ({ entries: one.treeSize, root: one.root, at: one.at, text: textOf(household, one) }));
    return ok({ entries: treeSize, root, keyFingerprint: household.key.fingerprint, sample: started.value.sample, proves: sealProves(), provesNot: sealProvesNot(), given });
  }).deferred();
}

/** Gives a seal over the journal as it stands; it is noted before it is told, as that of a pack is. */
export async function giveSeal(context: HostContext): Promise<Result<GivenSeal>> {
  const household = context.household();
  const { store } = household;
  const started = findHousehold(household.facts);
  if (!started.ok) return started;
  const given = store.transaction(() => {
    const head = headOf(household);
    noteSealGiven(store, head, context.world.now());
    const { at } = must(sealsNoted(store).find((one) => one.treeSize === head.treeSize && one.root === head.root), 'the seal just noted');
    return { entries: head.treeSize, root: head.root, at, text: textOf(household, head) };
  }).immediate();
  return ok({ ...given, code: await sealCode(given.text) });
}

function headOf({ store }: HouseholdFolder): JournalHead {
  const tree = merkleTree(readHashes(store), sha256);
  return { treeSize: tree.size, root: hexText(treeRoot(tree, sha256)) };
}

function textOf({ key }: HouseholdFolder, { treeSize, root }: JournalHead): string {
  return sealText(makeSeal({ treeSize, root }, key.fingerprint, key.sign));
}
