import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkPackAt } from '../../electron/pack/check-pack.ts';
import { openHouseholdWithPip, temporaryFolder } from '../host/open-test-host.ts';
import { png } from '../papers/small-files.ts';

test('a paper tied to a record later is in the pack with it, and its digest is proven by the car\'s own rows', async () => {
  const host = await openHouseholdWithPip();
  await host.must('record.add', { id: 'work', car: 'pip', lines: [{ name: 'Bulb' }] });
  const { paper } = await host.must('paper.keep', { name: 'bulb.png', base64: png(8, 8).toString('base64') });
  await host.must('paper.keep', { name: 'other.png', base64: png(9, 9).toString('base64') });
  const { ties } = await host.must('paper.tie', { paper: paper.id, to: [{ kind: 'record', id: 'work' }] });
  const { path } = await host.must('pack.write', { car: 'pip', out: temporaryFolder() });
  const checked = await checkPackAt(path);
  expect(checked).toMatchObject({ ok: true, value: { faults: [], warnings: [] } });
  expect(papersIn(path)).toEqual(['data/papers/0001-bulb.png']);

  await host.must('paper.untie', { tie: ties[0]?.id ?? '' });
  const without = await host.must('pack.write', { car: 'pip', out: temporaryFolder() });
  expect(papersIn(without.path)).toEqual([]);
});

/** The names of the papers in a pack, which holds its files as they are. */
function papersIn(path: string): string[] {
  return [...new Set(readFileSync(path, 'latin1').match(/data\/papers\/[\w.-]+?\.png/g) ?? [])];
}
