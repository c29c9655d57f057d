import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import type { Withheld } from '../../shared-core/handover/withheld-fields.ts';
import { checkPackAt } from '../../electron/pack/check-pack.ts';
import { isPresent } from './tool-present.ts';
import { unzipped } from './unzipped.ts';
import { day, openTestHost, temporaryFolder, type TestHost } from '../host/open-test-host.ts';
import { must } from '../../shared-core/result/assert.ts';

/** A household whose words are all findable: each secret stands nowhere else. */
async function household(): Promise<TestHost> {
  const host = openTestHost();
  await host.must('household.start', { name: 'Test household' });
  await host.must('car.add', { id: 'pip', name: 'Pip Ördög', firstRegistered: day('2022-11-25'), keptSince: day('2022-11-25'), vin: '1M8GDM9AXKP042788', registration: 'REG 5' });
  await host.must('car.add', { id: 'other', name: 'Otherwise' });
  await host.must('item.add', { id: 'fluid', car: 'pip', name: 'Brake fluid', interval: { first: { months: 36, distance: null }, repeat: { months: 24, distance: null } }, history: 'never-done' });
  await host.must('item.add', { id: 'coolant', car: 'pip', name: 'Coolant', interval: { repeat: { months: 60, distance: null } } });
  const { paper } = await host.must('paper.keep', { name: '../../receipt =1.pdf', base64: Buffer.from('%PDF-1.4\nnothing\n%%EOF\n').toString('base64') });
  await host.must('record.add', {
    id: 'service', car: 'pip', date: day('2026-11-20'), place: 'garage', placeName: 'SECRETPLACE', doneBy: 'SECRETPERSON', reference: 'SECRETREF', note: 'SECRETNOTE',
    reading: { value: 40_000, unit: 'km' }, lines: [{ name: '=Oil and filter', note: '-5 mm\nleft' }],
    costs: [{ kind: 'parts', text: 'SECRETCOST', amountMinor: 98_765_432_109 }], papers: [paper.id],
  });
  await host.must('record.amend', { id: 'service', title: 'Oil, filter and washer', why: 'the washer was forgotten' });
  await host.must('observation.note', { car: 'pip', text: 'A damp patch at the rear', recheckOn: day('2027-01-01') });
  await host.must('recall.set', { car: 'pip', number: 'R-104', what: 'Seat belt anchor' });
  await host.must('recall.set', { car: 'pip', number: 'R-90', what: 'Fuel pipe', nextOn: day('2027-03-20') });
  await host.must('recall.set', { car: 'pip', number: 'R-7', what: 'Horn', doneOn: day('2026-05-04'), how: 'Horn replaced', doneBy: 'SECRETPERSON' });
  await host.must('allowance.set', { car: 'pip', kind: 'warranty', name: 'Drive', every: 'term', distance: { value: 100_000, unit: 'km' }, from: day('2022-11-25'), to: day('2027-11-24'), startReading: { value: 0, unit: 'km' } });
  await host.must('allowance.set', { car: 'pip', kind: 'insurance', name: 'Insured', distance: { value: 9000, unit: 'km' }, from: day('2026-08-01') });
  await host.must('recall.set', { car: 'other', number: 'R-OTHER', what: 'Otherwise' });
  return host;
}

describe('the history pack', () => {
  let host: TestHost;
  let out: string;
  async function write(withhold: readonly Withheld[] = []) {
    host = await household();
    out = temporaryFolder();
    return host.must('pack.write', { car: 'pip', out, withhold: [...withhold] });
  }

  test('is sound, and says so to a stranger who has only the file', async () => {
    const { path } = await write();
    const report = await checkPackAt(path);
    expect(report).toMatchObject({ ok: true, value: { faults: [], withheld: [] } });
  });

  test('holds the rows of this car and of no other', async () => {
    const { path } = await write();
    const rows = readEntry(path, 'data/journal/rows.json');
    expect(rows).not.toContain('Otherwise');
    expect([...new Set((JSON.parse(rows) as { entries: { row: { subject: string } }[] }).entries.map((entry) => entry.row.subject))]).toEqual(['car/pip']);
  });

  test('is the same bytes when it is made again on the same day', async () => {
    const { path } = await write();
    const again = join(out, 'again');
    mkdirSync(again);
    const second = await host.must('pack.write', { car: 'pip', out: again });
    expect(readFileSync(second.path).equals(readFileSync(path))).toBe(true);
  });

  test('keeps back what is withheld, in every file of it, and stays sound', async () => {
    const { path } = await write(['doneBy', 'placeName', 'reference', 'note', 'costs', 'vin', 'registration']);
    expect(await checkPackAt(path)).toMatchObject({ ok: true, value: { faults: [] } });
    const folder = unpack(path);
    const text = allFiles(folder).map((file) => readFileSync(file).toString('latin1')).join('\n') + (await pdfText(join(folder, 'data/history.pdf')));
    for (const secret of ['SECRETPLACE', 'SECRETPERSON', 'SECRETREF', 'SECRETNOTE', 'SECRETCOST', '98765432109', '987654321.09', '1M8GDM9AXKP042788', 'REG 5']) expect(text).not.toContain(secret);
  });

  test('tells in the PDF what was done, when it was written, what is late, what is missing', async () => {
    const { path } = await write();
    const text = await pdfText(join(unpack(path), 'data/history.pdf'));
    for (const words of ['Service history of Pip Ördög', 'Oil, filter and washer', 'within a week (25 Nov 2026, 09:0', 'the washer was forgotten', 'SECRETPERSON', '987654321.09', 'Brake fluid: 12 months late', 'history unknown', 'A damp patch at the rear', 'never recorded since new']) {
      expect(text).toContain(words);
    }
  });

  test('lists the recalls with how each was done, the open ones among what is open, and the warranty by distance; no insurance', async () => {
    const { path } = await write();
    const folder = unpack(path);
    const text = await pdfText(join(folder, 'data/history.pdf'));
    for (const words of ['Recall R-104, not done: Seat belt anchor', 'Recall R-90, not done, booked for 20 Mar 2027: Fuel pipe', 'Recalls of the maker', 'Horn replaced', 'Warranties that end by date or distance', 'until 24 Nov 2027 at the latest', 'about 60 000 km left']) {
      expect(text.replaceAll('\u202f', ' ')).toContain(words);
    }
    expect(text).not.toContain('Recall R-7');
    expect(text).not.toContain('Insured');
    expect(readFileSync(join(folder, 'data/tables/recalls.csv'), 'utf8')).toContain('"R-7","Horn","2026-05-04","Horn replaced","SECRETPERSON",""');
    const { records } = JSON.parse(readFileSync(join(folder, 'data/history.json'), 'utf8')) as { records: { kind: string; values: { number?: string } }[] };
    expect(records.filter((one) => one.kind === 'recall-set').map((one) => one.values.number)).toEqual(['R-104', 'R-90', 'R-7']);
    expect(records.filter((one) => one.kind === 'distance-allowance-set')).toHaveLength(2);
  });

  test('makes cells harmless that a spreadsheet would take for a formula', async () => {
    const { path } = await write();
    const csv = readFileSync(join(unpack(path), 'data/tables/records.csv'), 'utf8');
    expect(csv).toContain(`"'=Oil and filter"`);
    expect(csv).toContain(`"'-5 mm\nleft"`);
  });

  test('gives a paper a name that no system can be hurt by', async () => {
    const { path } = await write();
    expect(readdirSync(join(unpack(path), 'data/papers'))).toEqual(['0001-receipt-1.pdf']);
  });

  test('forbids withdrawing what it sealed', async () => {
    await write();
    expect(await host.call('entry.withdraw', { entries: [5] })).toMatchObject({ ok: false, refusal: { code: 'entry-sealed' } });
  });

  test('is refused where a paper is no longer what was kept, and nothing is written', async () => {
    host = await household();
    out = temporaryFolder();
    const { id } = must((await host.must('car.show', { car: 'pip' })).papers[0], 'paper');
    writeFileSync(join(host.folder, 'papers', id.slice(0, 2), id), 'altered');
    expect(await host.call('pack.write', { car: 'pip', out })).toMatchObject({ ok: false, refusal: { code: 'paper-not-whole' } });
    expect(readdirSync(out)).toEqual([]);
  });

  // Source: qpdf's own check of syntax, streams and cross-references; it does not judge tags.
  test.skipIf(!isPresent('qpdf', '--version'))('has a PDF that qpdf finds no fault in (needs qpdf)', async () => {
    const { path } = await write();
    expect(() => execFileSync('qpdf', ['--check', join(unpack(path), 'data/history.pdf')])).not.toThrow();
  });

  test.skipIf(!isPresent('pdfinfo', '-v'))('has a tagged PDF with its title, and every font in it (needs poppler)', async () => {
    const { path } = await write();
    const pdf = join(unpack(path), 'data/history.pdf');
    expect(execFileSync('pdfinfo', [pdf], { encoding: 'utf8' })).toMatch(/Tagged:\s+yes/);
    expect(execFileSync('pdftotext', [pdf, '-'], { encoding: 'utf8' })).toContain('Service history of Pip Ördög');
    const fonts = execFileSync('pdffonts', [pdf], { encoding: 'utf8' }).trim().split('\n').slice(2);
    expect(fonts.length).toBeGreaterThan(0);
    for (const font of fonts) expect(font).toMatch(/\syes yes yes\s/);
  });
});

function unpack(zip: string): string {
  return unzipped(zip, temporaryFolder());
}

function readEntry(zip: string, name: string): string {
  return readFileSync(join(unpack(zip), name), 'utf8');
}

function allFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
}

async function pdfText(file: string): Promise<string> {
  const pdf = await getDocument({ data: new Uint8Array(readFileSync(file)), useSystemFonts: false }).promise;
  const pages = await Promise.all(Array.from({ length: pdf.numPages }, async (_, at) => (await (await pdf.getPage(at + 1)).getTextContent()).items));
  return pages.flat().map((item) => ('str' in item ? item.str : '')).join(' ').replace(/\s+/g, ' ');
}
