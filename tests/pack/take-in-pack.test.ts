import { copyFileSync, existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checkPackAt } from '../../electron/pack/check-pack.ts';
import { must } from '../../shared-core/result/assert.ts';
import { jsonOf, runCommand } from '../cli/run-command.ts';
import { day, openTestHost, temporaryFolder, type TestHost } from '../host/open-test-host.ts';
import { unzipped } from './unzipped.ts';

async function started(on: string): Promise<TestHost> {
  const host = openTestHost({ on });
  await host.must('household.start', { name: 'Household' });
  return host;
}

/** The first keeper's car, with a service whose paper goes along and a price that does not. */
async function firstKeeper(): Promise<{ readonly host: TestHost; readonly path: string; readonly seal: string }> {
  const host = await started('2026-03-02');
  await host.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25'), vin: '1M8GDM9AXKP042788' });
  await host.must('item.add', { id: 'oil', car: 'pip', name: 'oil', interval: { repeat: { months: 12, distance: null } }, history: 'never-done' });
  const { paper } = await host.must('paper.keep', { name: 'receipt.pdf', base64: Buffer.from('%PDF-1.4\nnothing\n%%EOF\n').toString('base64') });
  await host.must('record.add', {
    id: 'first', car: 'pip', date: day('2026-03-01'), place: 'garage', placeName: 'The garage', title: 'oil', doneBy: 'SECRETPERSON', reading: { value: 30_000, unit: 'km' },
    lines: [{ name: 'oil', item: 'oil' }], costs: [{ kind: 'parts', text: 'SECRETCOST', amountMinor: 4200 }], papers: [paper.id],
  });
  await host.must('observation.note', { id: 'seen', car: 'pip', text: 'A damp patch' });
  const { path, seal } = await host.must('pack.write', { car: 'pip', out: temporaryFolder(), withhold: ['costs', 'doneBy'] });
  return { host, path, seal };
}

const onlyCar = async (host: TestHost) => must((await host.must('due.show', {})).cars[0], 'car');

describe('a pack that is taken in', () => {
  test('brings the car, its records as the earlier keeper’s, and moves its intervals on', async () => {
    const { path, seal } = await firstKeeper();
    const second = await started('2026-06-01');
    expect(await second.must('pack.take-in', { pack: path, seal })).toMatchObject({ car: { name: 'Pip', keptSince: '2026-06-01' }, records: 1, readings: 1, left: 0 });
    const car = await onlyCar(second);
    expect(car.windows).toMatchObject([{ name: 'oil', likely: '2027-03-01' }]);
    const shown = await second.must('car.show', { car: car.id });
    expect(shown.records).toHaveLength(1);
    expect(shown.observations.map((one) => one.text)).toEqual(['A damp patch']);
    const record = must(shown.records[0], 'record').record;
    expect(record).toMatchObject({ title: 'oil', placeName: 'The garage', doneBy: null, costs: [] });
    expect(await second.call('record.amend', { id: record.id, title: 'Something else', why: 'no' })).toMatchObject({ ok: false, refusal: { code: 'of-earlier-keeper' } });
    const seen = must(shown.observations[0], 'observation').id;
    for (const change of [{ text: 'Nothing to see' }, { severity: 'soon' as const }, { date: day('2026-01-01') }]) expect(await second.call('observation.amend', { id: seen, ...change })).toMatchObject({ ok: false, refusal: { code: 'of-earlier-keeper' } });
    // When it is looked at next is the present keeper's to say.
    expect((await second.must('observation.amend', { id: seen, recheckOn: day('2026-09-01') })).observation.recheckOn).toBe('2026-09-01');
  });

  test('is kept byte for byte, in backups and under examination', async () => {
    const { path } = await firstKeeper();
    const second = await started('2026-06-01');
    await second.must('pack.take-in', { pack: path });
    const found = readdirSync(join(second.folder, 'papers'), { recursive: true, withFileTypes: true }).filter((one) => one.isFile()).map((one) => join(one.parentPath, one.name));
    const kept = must(found.find((file) => readFileSync(file).equals(readFileSync(path))), 'kept pack');
    expect(await second.must('household.examine', {})).toMatchObject({ faults: [] });
    const { folder } = await second.must('backup.make', {});
    expect(existsSync(join(folder, kept.slice(second.folder.length)))).toBe(true);
    writeFileSync(kept, 'altered');
    expect((await second.must('household.examine', {})).faults).toMatchObject([{ where: expect.stringContaining('pack of an earlier keeper') as string, what: 'has been altered' }]);
    expect(await second.call('pack.write', { car: (await onlyCar(second)).id, out: temporaryFolder() })).toMatchObject({ ok: false, refusal: { code: 'previous-pack-not-whole' } });
  });

  test('and handed over again still proves the first keeper’s records, by a second and a third household', async () => {
    const { path } = await firstKeeper();
    const packs = [path];
    for (const on of ['2027-06-01', '2028-06-01']) {
      const host = await started(on);
      await host.must('pack.take-in', { pack: must(packs.at(-1), 'pack') });
      const car = await onlyCar(host);
      const item = must((await host.must('car.show', { car: car.id })).items[0], 'item').item;
      await host.must('record.add', { car: car.id, date: day(on), place: 'home', title: `oil ${on}`, lines: [{ name: 'oil', item: item.id }] });
      packs.push((await host.must('pack.write', { car: car.id, out: temporaryFolder() })).path);
    }
    const [, second = '', third = ''] = packs;
    for (const pack of [second, third]) expect(await checkPackAt(pack)).toMatchObject({ ok: true, value: { faults: [], warnings: [] } });
    const inThird = unzipped(third, temporaryFolder());
    const [carried = ''] = readdirSync(join(inThird, 'data/previous'));
    expect(readFileSync(join(inThird, 'data/previous', carried)).equals(readFileSync(second))).toBe(true);
    const inSecond = unzipped(second, temporaryFolder());
    const [first = ''] = readdirSync(join(inSecond, 'data/previous'));
    expect(readFileSync(join(inSecond, 'data/previous', first)).equals(readFileSync(path))).toBe(true);
    const records = readFileSync(join(inThird, 'data/tables/records.csv'), 'utf8');
    expect(records).toMatch(/"2026-03-01","2026-03-02T09:[^"]*","within-a-week","oil"/);
    expect(records).toMatch(/"2027-06-01","2027-06-01T09:[^"]*","same-day","oil 2027-06-01"/);
    // One byte of the first keeper's pack, two packs deep, is found and named by the way to it.
    const [bytes, ofFirst] = [readFileSync(third), readFileSync(path)];
    const within = bytes.indexOf(ofFirst);
    expect(within).toBeGreaterThan(0);
    writeFileSync(third, bytes.with(within + ofFirst.indexOf('A damp patch'), 66));
    const report = await checkPackAt(third);
    expect(report.ok && report.value.faults.map((fault) => fault.path)).toEqual(expect.arrayContaining([`data/previous/${carried}!/data/previous/${first}!/data/history.json`]));
  });
});

test('a taking in is undone as a whole, never in part: what it brought does not pass for the keeper’s own', async () => {
  const { path } = await firstKeeper();
  const second = await started('2026-06-01');
  const { undo, car } = await second.must('pack.take-in', { pack: path });
  const refusal = { ok: false, refusal: { code: 'pack-goes-whole', values: { name: 'pip-history-2026-03-02' } } };
  const record = must((await second.must('car.show', { car: car.id })).records[0], 'record').record.id;
  expect(await second.call('entry.withdraw', { entries: undo.slice(-1), why: 'mine' })).toMatchObject(refusal);
  expect(await second.call('entry.withdraw', { entries: undo.slice(2), why: 'mine' })).toMatchObject(refusal);
  expect(await second.call('record.take-back', { record, why: 'mine' })).toMatchObject(refusal);
  expect(await second.call('record.amend', { id: record, title: 'Mine', why: 'mine' })).toMatchObject({ ok: false, refusal: { code: 'of-earlier-keeper' } });
  // What the keeper enters afterwards is undone by itself, and then the whole.
  const own = await second.must('reading.record', { car: car.id, value: 31_000, date: day('2026-06-01') });
  await second.must('entry.withdraw', { entries: [...own.undo], why: 'a slip' });
  await second.must('entry.withdraw', { entries: undo, why: 'the wrong car' });
  expect((await second.must('due.show', {})).cars).toEqual([]);
  expect(await second.must('pack.take-in', { pack: path })).toMatchObject({ records: 1 });
});

describe('a pack that is refused', () => {
  async function refusal(pack: string, request: { seal?: string } = {}): Promise<unknown> {
    const host = await started('2026-06-01');
    const reply = await host.call('pack.take-in', { pack, ...request });
    expect(readdirSync(join(host.folder, 'papers'), { recursive: true, withFileTypes: true }).filter((one) => one.isFile())).toEqual([]);
    expect((await host.must('due.show', {})).cars).toEqual([]);
    return reply.ok ? null : reply.refusal;
  }

  test('faulty, its faults named, and nothing of it stays', async () => {
    const { path } = await firstKeeper();
    const bytes = readFileSync(path);
    writeFileSync(path, bytes.with(bytes.indexOf('The garage'), 66));
    expect(await refusal(path)).toMatchObject({ code: 'pack-not-sound', values: { first: expect.stringContaining('data/history.json') as string } });
  });

  test.each([
    { case: 'no ZIP', bytes: Buffer.from('a letter'), code: 'pack-not-sound' },
    { case: 'a ZIP cut off', bytes: Buffer.from('504b0304', 'hex'), code: 'pack-not-sound' },
  ])('hostile: $case', async ({ bytes, code }) => {
    const path = join(temporaryFolder(), 'x.zip');
    writeFileSync(path, bytes);
    expect(await refusal(path)).toMatchObject({ code });
  });

  test('that is not there, or a folder, or was rebuilt under another key than its seal', async () => {
    const folder = temporaryFolder();
    expect(await refusal(join(folder, 'none.zip'))).toMatchObject({ code: 'pack-not-found' });
    expect(await refusal(folder)).toMatchObject({ code: 'pack-not-a-file' });
    const [{ path }, { seal }] = [await firstKeeper(), await firstKeeper()];
    expect(await refusal(path, { seal })).toMatchObject({ code: 'pack-not-sound', values: { first: expect.stringContaining('rebuilt') as string } });
  });

  test('the same car twice, by the same pack, by a later one, by its number, or back to its own household', async () => {
    const { host: first, path } = await firstKeeper();
    const second = await started('2026-06-01');
    await second.must('pack.take-in', { pack: path });
    expect(await second.call('pack.take-in', { pack: path })).toMatchObject({ ok: false, refusal: { code: 'pack-taken-in-already' } });
    const later = await first.must('pack.write', { car: 'pip', out: temporaryFolder(), withhold: ['vin'] });
    expect(await second.call('pack.take-in', { pack: later.path })).toMatchObject({ ok: false, refusal: { code: 'car-there-already' } });
    expect(await first.call('pack.take-in', { pack: later.path })).toMatchObject({ ok: false, refusal: { code: 'car-is-own' } });
    expect((await second.must('due.show', {})).cars).toHaveLength(1);
  });

  test('changes no byte that is kept here: not the pack that was taken in before, not a paper', async () => {
    const { host: first, path } = await firstKeeper();
    const second = await started('2026-06-01');
    const kept = () => readdirSync(join(second.folder, 'papers'), { recursive: true, withFileTypes: true }).filter((one) => one.isFile()).map((one) => one.name).sort();
    await second.must('pack.take-in', { pack: path });
    const before = kept();
    expect(await second.call('pack.take-in', { pack: path })).toMatchObject({ ok: false, refusal: { code: 'pack-taken-in-already' } });
    expect(kept()).toEqual(before);
    expect(await second.must('household.examine', {})).toMatchObject({ faults: [] });
    // A later pack of the same car, with a paper more.
    const { paper } = await first.must('paper.keep', { name: 'later.pdf', base64: Buffer.from('%PDF-1.4\nlater\n%%EOF\n').toString('base64') });
    await first.must('record.add', { car: 'pip', date: day('2026-03-02'), place: 'home', title: 'later', lines: [{ name: 'later' }], papers: [paper.id] });
    const later = await first.must('pack.write', { car: 'pip', out: temporaryFolder() });
    expect(await second.call('pack.take-in', { pack: later.path })).toMatchObject({ ok: false, refusal: { code: 'car-there-already' } });
    expect(kept()).toEqual(before);
  });

  test('of the sample in a real household, unless it is said', async () => {
    const sample = openTestHost({ on: '2026-11-25' });
    await sample.must('sample.open', {});
    const { path } = await sample.must('pack.write', { car: 'pip', out: temporaryFolder(), papers: false });
    expect(await refusal(path)).toMatchObject({ code: 'pack-of-sample' });
    const host = await started('2026-11-25');
    expect(await host.must('pack.take-in', { pack: path, sample: true })).toMatchObject({ car: { name: 'Pip' } });
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  });
});

test('take-in on the command line, with a seal', async () => {
  const { path, seal } = await firstKeeper();
  const folder = join(temporaryFolder(), 'household');
  await (await startedIn(folder)).composed.close();
  const copy = join(temporaryFolder(), 'given.zip');
  copyFileSync(path, copy);
  const ran = await runCommand('take-in', copy, '--seal', seal, '--household', folder, '--on', '2026-06-01', '--json');
  expect([ran.status, ran.said]).toEqual([0, '']);
  expect(jsonOf(ran)).toMatchObject({ name: 'pip-history-2026-03-02', records: 1 });
  expect((await runCommand('take-in', '--household', folder)).status).toBe(2);
});

async function startedIn(folder: string): Promise<TestHost> {
  const host = openTestHost({ folder, on: '2026-06-01' });
  await host.must('household.start', { name: 'Household' });
  return host;
}
