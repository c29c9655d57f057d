import { describe, expect, test } from 'vitest';
import { checkPack } from '../../../shared-core/handover/check-pack.ts';
import type { PackInput } from '../../../shared-core/handover/compose-pack.ts';
import type { HistoryPrevious } from '../../../shared-core/handover/history-part.ts';
import { HISTORY, textFile } from '../../../shared-core/handover/pack-files.ts';
import { bytesOf, DIGESTS, foundIn, journal, pipPack, TOOLS, type FixtureOptions } from './pack-fixture.ts';

const FIRST = textFile('data/previous/1-first.zip', 'the pack of the first keeper', DIGESTS);
const OTHER = textFile('data/previous/1-first.zip', 'another pack that is sound as well', DIGESTS);
const WITHIN = 'a'.repeat(64);

const CAR = { subject: 'car/pip', kind: 'car-set', values: { id: 'pip', name: 'Pip', year: 2022 } };
const TAKEN_IN = { subject: 'car/pip', kind: 'pack-taken-in', values: { id: 'pip-pack', car: 'pip', pack: FIRST.sha256, before: [{ name: 'within', composedOn: '2020-01-01', rows: 3, pack: WITHIN, handedOver: true }] } };

const told = (more: Partial<HistoryPrevious> = {}): HistoryPrevious => ({ name: 'first', composedOn: '2024-01-01' as HistoryPrevious['composedOn'], rows: 3, sha256: FIRST.sha256, path: FIRST.path, within: null, ...more });

/** What checking names in a pack that its own keeper made and signed, with these packs of earlier keepers. */
function named(input: Pick<PackInput, 'previous'>, files: FixtureOptions['files'] = [FIRST], entries = [CAR, TAKEN_IN]): string[] {
  const pack = pipPack({ kept: journal(entries), files, change: (whole) => ({ ...whole, ...input }) });
  const { faults } = checkPack({ found: foundIn(bytesOf(pack)), container: [], excused: new Set(), base: null, givenSeal: null }, TOOLS);
  return faults.map(({ code, path, row, message }) => `${code} ${path ?? '-'}${row === null ? '' : ` row ${row}`} ${message.key}`);
}

describe('packs of earlier keepers, in a pack that its keeper signed', () => {
  test.each([
    { case: 'in the pack, and another one within it', previous: [told({ name: 'within', sha256: WITHIN, path: null, within: FIRST.path }), told()], files: [FIRST] },
    { case: 'left out', previous: [told({ path: null })], files: [] },
  ])('$case: no fault', ({ previous, files }) => {
    expect(named({ previous }, files)).toEqual([]);
  });

  test.each([
    { case: 'another pack in its place', previous: [told()], files: [OTHER], faults: [`changed ${FIRST.path} fault-previous-changed`] },
    { case: 'another pack in its place, which the history names as well', previous: [told({ sha256: OTHER.sha256 })], files: [OTHER], faults: [`added ${FIRST.path} fault-previous-unnamed`, `missing ${HISTORY} row 1 fault-previous-missing`] },
    { case: 'taken away', previous: [told()], files: [], faults: [`missing ${FIRST.path} fault-file-missing`] },
    { case: 'taken away, and not named', previous: [], files: [], faults: [`missing ${HISTORY} row 1 fault-previous-missing`] },
    { case: 'one beside it', previous: [told()], files: [FIRST, { ...OTHER, path: 'data/previous/2.zip' }], faults: ['added data/previous/2.zip fault-previous-unnamed'] },
    { case: 'one more left out than there was', previous: [told(), told({ name: 'none', sha256: OTHER.sha256, path: null })], files: [FIRST], faults: [`added ${HISTORY} fault-previous-unnamed`] },
  ])('$case', ({ previous, files, faults }) => {
    expect(named({ previous }, files)).toEqual(faults);
  });

  test('one of a car that came with none', () => {
    expect(named({ previous: [told()] }, [FIRST], [CAR])).toEqual([`added ${FIRST.path} fault-previous-unnamed`]);
  });
});
