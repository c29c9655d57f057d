import type { Pack } from '../../shared-core/handover/compose-pack.ts';
import type { KeptEntry } from '../../shared-core/handover/journal-part.ts';
import { bytesFile, textFile, type PackFile } from '../../shared-core/handover/pack-files.ts';
import type { Seal } from '../../shared-core/journal/seal.ts';
import { zipOf } from '../pack/unpack.ts';
import { DIGESTS, householdKey, journal, onDate, PHOTO_DIGEST, pipPack, previousOf, sealOf, takenInWith, type FixtureEntry } from '../shared-core/handover/pack-fixture.ts';
import type { diceOf } from '../shared-core/parts/order-seeds.ts';

export type Dice = ReturnType<typeof diceOf>;

/** A sound pack from a seed, with what it was made from. */
export interface SeededPack {
  readonly pack: Pack;
  readonly entries: readonly FixtureEntry[];
  readonly kept: readonly KeptEntry[];
  readonly seal: Seal;
  /** The pack of the keeper before, as it stands in this one. */
  readonly previous: Pack | null;
}

const PREVIOUS_PATH = 'data/previous/1-pip.zip';

/** The path of the earlier keeper's pack within a seeded pack. */
export const previousPath = PREVIOUS_PATH;

/** A pack of car pip: some 4 to 20 entries of two cars, papers, fields kept back, seals given before, perhaps an earlier keeper's pack. */
export async function seededPack(dice: Dice, withPrevious: boolean): Promise<SeededPack> {
  const own = entriesOf(dice);
  const papers = Array.from({ length: dice.whole(0, 3) }, (_, at) => bytesFile(`data/papers/000${at + 2}-paper.pdf`, randomBytes(dice), DIGESTS));
  const previous = withPrevious ? pipPack({ key: householdKey(1), kept: journal(entriesOf(dice)) }) : null;
  const inner = previous === null ? [] : [bytesFile(PREVIOUS_PATH, await zipOf(previous.name, previous.files), DIGESTS)];
  const entries = [...own, ...inner.map(takenInWith)];
  const kept = journal(entries);
  const earlier = [kept.length - 2, kept.length - 1].filter(() => dice.chance(40)).map((size) => sealOf(kept.slice(0, size)));
  const hidden = new Set(['year', 'note'].filter(() => dice.chance(30)));
  const files: readonly PackFile[] = [...papers, ...inner, textFile('data/tables/readings.csv', `"date"\r\n"${dice.whole(1, 9)}"\r\n`, DIGESTS)];
  const pack = pipPack({
    kept, earlier, files,
    show: (_row, field) => !hidden.has(field),
    change: (input) => ({
      ...input,
      name: `pip-${dice.whole(1, 999)}`,
      previous: inner.flatMap(previousOf),
      composedOn: onDate(`2026-11-${dice.whole(10, 30)}`),
      papers: [...input.papers, ...papers.map(({ path, sha256 }) => ({ path, sha256, redactedFrom: null }))],
    }),
  });
  return { pack, entries, kept, seal: sealOf(kept), previous };
}

/** Every car pip has at least three entries, so that rows can change places. */
function entriesOf(dice: Dice): FixtureEntry[] {
  const count = dice.whole(4, 20);
  return Array.from({ length: count }, (_, at): FixtureEntry => {
    const car = at < 3 || at === count - 1 || dice.chance(60) ? 'pip' : 'moth';
    if (at === 0) return { subject: 'car/pip', kind: 'car-set', values: { id: 'pip', name: 'Pip', year: dice.whole(1960, 2026) } };
    const work = { id: `w${at}`, car, date: `2026-01-${dice.whole(10, 28)}`, title: dice.one(['Oil', 'Brakes', 'Bulb']), note: `note ${dice.whole(1, 99)}`, papers: [PHOTO_DIGEST] };
    return { subject: `car/${car}`, kind: 'work-recorded', values: work };
  });
}

function randomBytes(dice: Dice): Uint8Array {
  return Uint8Array.from({ length: dice.whole(20, 400) }, () => dice.whole(0, 255));
}
