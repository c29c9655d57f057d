import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checkPackAt } from '../../electron/pack/check-pack.ts';
import { must } from '../../shared-core/result/assert.ts';
import { runCommand } from '../cli/run-command.ts';
import { day, openTestHost, temporaryFolder, type TestHost } from '../host/open-test-host.ts';
import { unzipped } from './unzipped.ts';

/** The household of a second keeper, whose car came with a pack that says who did the work, on a day of 2024. */
async function secondKeeper(): Promise<{ readonly host: TestHost; readonly car: string }> {
  const first = openTestHost({ on: '2025-03-02' });
  await first.must('household.start', { name: 'First' });
  await first.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25') });
  await first.must('record.add', { car: 'pip', date: day('2024-03-01'), place: 'home', title: 'Bulb', doneBy: 'SECRETPERSON', lines: [{ name: 'Bulb' }] });
  const { path, notes } = await first.must('pack.write', { car: 'pip', out: temporaryFolder(), withhold: ['costs'] });
  expect(notes).toEqual([]);
  const host = openTestHost({ on: '2026-06-01' });
  await host.must('household.start', { name: 'Second' });
  const { car } = await host.must('pack.take-in', { pack: path });
  return { host, car: car.id };
}

/** All bytes of a pack as text, and what its document says. */
function textsOf(path: string): { readonly all: string; readonly document: string; readonly folder: string } {
  const folder = unzipped(path, temporaryFolder());
  return { folder, all: readFileSync(path).toString('latin1'), document: readFileSync(join(folder, 'data/history.json'), 'utf8') };
}

const GOES_ALONG = /goes along whole and unaltered \(pip-history-2025-03-02\), and shows fields, papers and days that are withheld/;
const LEFT_OUT = /The packs of earlier keepers \(pip-history-2025-03-02\)\. .*cannot be proven from this pack/;

describe('the pack of an earlier keeper, where something is withheld', () => {
  test.each([
    { case: 'a field', request: { withhold: ['doneBy' as const] } },
    { case: 'days', request: { period: { from: day('2025-01-01'), to: null } } },
    { case: 'all papers', request: { papers: false } },
    { case: 'some papers', request: { onlyPapers: [] } },
  ])('is not handed over unless it is said: $case', async ({ request }) => {
    const { host, car } = await secondKeeper();
    const out = temporaryFolder();
    expect(await host.call('pack.write', { car, out, ...request })).toMatchObject({ ok: false, refusal: { code: 'previous-pack-shows-withheld', path: ['previous'], values: { name: 'pip-history-2025-03-02' } } });
    expect(readdirSync(out)).toEqual([]);
    expect((await host.must('pack.preview', { car, ...request })).withheld.join('\n')).toMatch(GOES_ALONG);
  });

  test('goes along whole where it is said, and document, preview and reply say what it shows', async () => {
    const { host, car } = await secondKeeper();
    const { path, notes } = await host.must('pack.write', { car, out: temporaryFolder(), withhold: ['doneBy'], previous: 'whole' });
    expect(notes.join('\n')).toMatch(GOES_ALONG);
    const { all, document } = textsOf(path);
    expect(document).toMatch(GOES_ALONG);
    expect(document).toContain('proven by the pack in data/previous');
    expect(all).toContain('SECRETPERSON');
  });

  test('is left out where that is chosen: nothing of what is withheld is in the pack, which says what it cannot prove', async () => {
    const { host, car } = await secondKeeper();
    const request = { car, withhold: ['doneBy' as const], previous: 'left-out' as const };
    expect((await host.must('pack.preview', request)).withheld.join('\n')).toMatch(LEFT_OUT);
    const { path, notes } = await host.must('pack.write', { ...request, out: temporaryFolder() });
    expect(notes.join('\n')).toMatch(LEFT_OUT);
    const { all, document, folder } = textsOf(path);
    expect(all).not.toContain('SECRETPERSON');
    expect(readdirSync(join(folder, 'data'))).not.toContain('previous');
    expect(document).toMatch(LEFT_OUT);
    expect(document).toContain('not proven here, for the earlier pack is left out');
    expect(document).not.toContain('proven by the pack in data/previous');
    const report = await checkPackAt(path);
    expect(must(report.ok ? report.value : null, 'report').faults).toEqual([]);
  });
});

test('nothing has to be said where nothing is withheld', async () => {
  const { host, car } = await secondKeeper();
  const { path, notes } = await host.must('pack.write', { car, out: temporaryFolder() });
  expect(notes).toEqual([]);
  expect(textsOf(path).document).not.toMatch(GOES_ALONG);
});

test('it is said on the command line, one way only', async () => {
  const { host, car } = await secondKeeper();
  expect((await host.must('pack.papers', { car })).previous).toEqual(['pip-history-2025-03-02']);
  await host.composed.close();
  const run = (...more: string[]) => runCommand('pack', car, '--out', temporaryFolder(), '--withhold', 'doneBy', '--on', '2026-06-01', '--household', host.folder, ...more);
  expect(await run()).toMatchObject({ status: 1, said: expect.stringContaining('goes along whole and unaltered') as string });
  expect(await run('--with-previous', '--without-previous')).toMatchObject({ status: 2 });
  expect(await run('--with-previous')).toMatchObject({ status: 0, out: expect.stringMatching(GOES_ALONG) as string });
  expect(await run('--without-previous')).toMatchObject({ status: 0, out: expect.stringMatching(LEFT_OUT) as string });
});
