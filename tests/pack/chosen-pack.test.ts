import { execFileSync } from 'node:child_process';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { checkPackAt } from '../../electron/pack/check-pack.ts';
import { packCheckView } from '../../shared-core/views/pack-check-view.ts';
import { runCommand } from '../cli/run-command.ts';
import { day, openTestHost, temporaryFolder, type TestHost } from '../host/open-test-host.ts';
import { isPresent } from './tool-present.ts';
import { unzipped } from './unzipped.ts';

const picture = (colour: string) => sharp({ create: { width: 320, height: 200, channels: 3, background: colour } }).jpeg().withExif({ IFD0: { Artist: 'SECRETARTIST' } }).toBuffer();

/** A car with work, readings and papers of two years, each word of which can be found. */
async function household(): Promise<{ readonly host: TestHost; readonly papers: readonly string[] }> {
  const host = openTestHost();
  await host.must('household.start', { name: 'Test household' });
  await host.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25') });
  await host.must('item.add', { id: 'oil', car: 'pip', name: 'Oil and filter', interval: { repeat: { months: 12, distance: null } }, history: 'never-done' });
  const papers: string[] = [];
  for (const [name, colour] of [['EARLYPAPER.jpg', 'red'], ['LATEPAPER.jpg', 'blue'], ['Pip in the yard.jpg', 'green'], ['EARLYTIED.jpg', 'grey']] as const) {
    papers.push((await host.must('paper.keep', { name, base64: (await picture(colour)).toString('base64') })).paper.id);
  }
  const [early = '', late = '', yard = '', tie = ''] = papers;
  await host.must('record.add', { id: 'r1', car: 'pip', date: day('2024-03-01'), place: 'home', title: 'EARLYWORK', reading: { value: 31_111, unit: 'km' }, lines: [{ name: 'Oil', item: 'oil' }], papers: [early] });
  await host.must('record.add', { id: 'r2', car: 'pip', date: day('2026-03-01'), place: 'home', title: 'LATEWORK', reading: { value: 52_222, unit: 'km' }, lines: [{ name: 'Oil', item: 'oil' }], papers: [late, yard] });
  await host.must('paper.tie', { paper: tie, to: [{ kind: 'record', id: 'r1' }] });
  await host.must('record.amend', { id: 'r1', title: 'EARLYWORK and more', why: 'EARLYREASON' });
  await host.must('observation.note', { car: 'pip', text: 'EARLYSEEN', date: day('2024-04-01') });
  await host.must('observation.note', { car: 'pip', text: 'LATESEEN', date: day('2026-04-01') });
  return { host, papers };
}

/** Every text of a pack, and the bytes of its PDF apart. */
function textsOf(path: string): { readonly text: string; readonly pdf: string; readonly folder: string } {
  const folder = unzipped(path, temporaryFolder());
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  const pdf = isPresent('pdftotext', '-v') ? execFileSync('pdftotext', ['-layout', join(folder, 'data/history.pdf'), '-'], { encoding: 'utf8' }) : '';
  return { folder, pdf, text: files.map((file) => readFileSync(file).toString('latin1')).join('\n') + pdf + files.join('\n') };
}

async function notesOf(path: string): Promise<readonly string[]> {
  const report = await checkPackAt(path);
  if (!report.ok) throw new Error(report.refusal.code);
  expect(report.value.faults).toEqual([]);
  return packCheckView(report.value).notes;
}

describe('a pack of a period', () => {
  test('holds what is dated within it and nothing of other days, and says so in PDF, JSON, bag and check', async () => {
    const { host } = await household();
    const { path } = await host.must('pack.write', { car: 'pip', out: temporaryFolder(), period: { from: day('2025-01-01'), to: null } });
    const { text, folder } = textsOf(path);
    for (const left of ['EARLYWORK', 'EARLYREASON', 'EARLYSEEN', 'EARLYPAPER', 'EARLYTIED', 'paper-tied', '31111', '31 111']) expect(text).not.toContain(left);
    for (const held of ['LATEWORK', 'LATESEEN', 'LATEPAPER', '52222']) expect(text).toContain(held);
    expect(await notesOf(path)).toContain('This pack shows what is dated 1 Jan 2025 or later only.');
    expect(JSON.parse(readFileSync(join(folder, 'data/history.json'), 'utf8'))).toMatchObject({ period: { from: '2025-01-01', to: null } });
    expect(readFileSync(join(folder, 'bag-info.txt'), 'utf8')).toContain('This pack shows what is dated 1 Jan 2025 or later only.');
    expect(readFileSync(join(folder, 'data/tables/items.csv'), 'utf8')).toContain('"2026-03-01","1"');
    expect(readFileSync(join(folder, 'data/tables/items.csv'), 'utf8')).toContain('not shown before 1 Jan 2025');
  });

  test.skipIf(!isPresent('pdftotext', '-v'))('says on its first page what it shows (needs poppler)', async () => {
    const { host } = await household();
    const { path } = await host.must('pack.write', { car: 'pip', out: temporaryFolder(), period: { from: day('2024-01-01'), to: day('2025-01-01') } });
    const { pdf } = textsOf(path);
    expect(pdf.split('\f')[0]).toContain('This pack shows 1 Jan 2024 to 1 Jan 2025 only.');
    expect(pdf).not.toContain('LATEWORK');
  });

  test('goes by what stands: an amendment that was withdrawn moves no record into it', async () => {
    const { host } = await household();
    const { undo } = await host.must('record.amend', { id: 'r1', date: day('2026-03-05'), why: 'A slip' });
    await host.must('entry.withdraw', { entries: [...undo] });
    const rows = async (from: string, to: string | null) => readFileSync(join(textsOf((await host.must('pack.write', { car: 'pip', out: temporaryFolder(), papers: false, period: { from: day(from), to: to === null ? null : day(to) } })).path).folder, 'data/journal/rows.json'), 'utf8');
    expect(await rows('2025-01-01', null)).not.toContain('EARLYWORK');
    expect(await rows('2024-01-01', '2024-12-31')).toContain('EARLYWORK');
  });

  test('says of what was done after it that it is not shown, not that it was never recorded', async () => {
    const { host } = await household();
    const period = { from: null, to: day('2024-01-01') };
    const { folder } = textsOf((await host.must('pack.write', { car: 'pip', out: temporaryFolder(), period })).path);
    const items = readFileSync(join(folder, 'data/tables/items.csv'), 'utf8');
    expect(items).toContain('"not shown after 1 Jan 2024"');
    expect(items).not.toContain('never recorded');
    expect((await host.must('pack.preview', { car: 'pip', period })).figures).toContainEqual({ name: 'Service items', text: expect.stringContaining('0 with something missing') as string });
  });

  test('that ends before it begins is refused, and nothing is written', async () => {
    const { host } = await household();
    const out = temporaryFolder();
    expect(await host.call('pack.write', { car: 'pip', out, period: { from: day('2026-01-02'), to: day('2026-01-01') } })).toMatchObject({ ok: false, refusal: { code: 'period-ends-before-it-begins' } });
    expect(readdirSync(out)).toEqual([]);
  });

  test('is chosen on the command line', async () => {
    const { host, papers } = await household();
    await host.composed.close();
    const out = temporaryFolder();
    const ran = await runCommand('pack', 'pip', '--out', out, '--from', '2025-01-01', '--to', '2026-11-25', '--papers', papers[1] ?? '', '--letter', '--on', '2026-11-25', '--household', host.folder);
    expect(ran.status, ran.said).toBe(0);
    expect(await notesOf(join(out, 'pip-history-2026-11-25.zip'))).toContain('This pack shows 1 Jan 2025 to 25 Nov 2026 only: what is dated outside is left out.');
    expect((await runCommand('pack', 'pip', '--out', out, '--from', 'yesterday', '--household', host.folder)).status).toBe(1);
  });
});

describe('papers one by one', () => {
  test('only those chosen are in the pack; the others are named as withheld, and no picture of them is left', async () => {
    const { host, papers } = await household();
    const { path } = await host.must('pack.write', { car: 'pip', out: temporaryFolder(), onlyPapers: [papers[1] ?? ''] });
    const { folder, pdf } = textsOf(path);
    expect(readdirSync(join(folder, 'data/papers'))).toEqual(['0001-LATEPAPER.jpg']);
    if (isPresent('pdfimages', '-v')) expect(execFileSync('pdfimages', ['-list', join(folder, 'data/history.pdf')], { encoding: 'utf8' }).trim().split('\n')).toHaveLength(2 + 1);
    if (isPresent('pdftotext', '-v')) expect(pdf).toContain('3 of 4 papers');
  });

  test.skipIf(!isPresent('pdfimages', '-v'))('the photograph called by the car’s name is on the first page, and no note of its camera in the PDF (needs poppler)', async () => {
    const { host, papers } = await household();
    const { path } = await host.must('pack.write', { car: 'pip', out: temporaryFolder() });
    const { folder } = textsOf(path);
    const pdf = join(folder, 'data/history.pdf');
    expect(execFileSync('pdfimages', ['-list', '-f', '1', '-l', '1', pdf], { encoding: 'utf8' }).trim().split('\n')).toHaveLength(2 + 1);
    expect(readFileSync(pdf).toString('latin1')).not.toContain('SECRETARTIST');
    expect(await host.call('pack.write', { car: 'pip', out: temporaryFolder(), onlyPapers: [papers[1] ?? '', 'f'.repeat(64)] })).toMatchObject({ ok: false, refusal: { code: 'paper-not-of-car', values: { paper: 'f'.repeat(64) } } });
    expect(await host.call('pack.write', { car: 'pip', out: temporaryFolder(), onlyPapers: [], cover: papers[0] ?? '' })).toMatchObject({ ok: false, refusal: { code: 'cover-not-in-pack' } });
  });
});

test('the schemas in the pack take its JSON files, and refuse them with a field more', async () => {
  const { host } = await household();
  const { path } = await host.must('pack.write', { car: 'pip', out: temporaryFolder() });
  const folder = unzipped(path, temporaryFolder());
  for (const file of ['data/history.json', 'data/journal/rows.json', 'data/journal/seal.json', 'signed-contents.json']) {
    const name = (file.split('/').at(-1) ?? '').replace('.json', '.schema.json');
    const schema = z.fromJSONSchema(JSON.parse(readFileSync(join(folder, 'data/schema', name), 'utf8')) as Parameters<typeof z.fromJSONSchema>[0]);
    const value = JSON.parse(readFileSync(join(folder, file), 'utf8')) as object;
    expect(schema.safeParse(value).success, file).toBe(true);
    expect(schema.safeParse({ ...value, more: 1 }).success, file).toBe(false);
  }
});
