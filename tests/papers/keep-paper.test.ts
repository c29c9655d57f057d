import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { paperFinder } from '../../electron/host/find-paper.ts';
import { paperPath } from '../../electron/papers/write-paper.ts';
import { openHouseholdWithPip, openTestHost, type TestHost } from '../host/open-test-host.ts';
import { jpeg, pdf, png, WEBP } from './small-files.ts';

function keep(host: TestHost, name: string, bytes: Buffer | string = 'a receipt') {
  return host.call('paper.keep', { name, base64: Buffer.from(bytes).toString('base64') });
}

function filesOf(host: TestHost): readonly string[] {
  return readdirSync(join(host.folder, 'papers'), { recursive: true, encoding: 'utf8' });
}

describe('keeping a paper', () => {
  test('takes its kind from its bytes, whatever its name says', async () => {
    const host = await openHouseholdWithPip();
    for (const [name, bytes, media] of [['photo.png', png(3, 3), 'image/png'], ['photo.pdf', jpeg(), 'image/jpeg'], ['photo', WEBP.lossy, 'image/webp'], ['page.jpg', await pdf(), 'application/pdf'], ['receipt.pdf', 'text', 'application/octet-stream']] as const) {
      expect(await keep(host, name, bytes)).toMatchObject({ ok: true, value: { paper: { name, media, bytes: bytes.length } } });
    }
    expect(await host.must('household.examine', {})).toMatchObject({ papers: 5, faults: [] });
  });

  // The bytes are kept by digest alone, so that no name can be a path; a name is what is shown and what a pack calls the file.
  test.each([
    { case: 'a way up', name: '../receipt.pdf', kept: 'receipt.pdf' },
    { case: 'a way up and down', name: '../../etc/passwd', kept: 'passwd' },
    { case: 'a Windows way', name: 'C:\\Users\\me\\receipt.pdf', kept: 'receipt.pdf' },
    { case: 'nothing but dots', name: '..', kept: 'paper' },
    { case: 'nothing but slashes and spaces', name: '/ /', kept: 'paper' },
    { case: 'a dot and a slash', name: './', kept: 'paper' },
    { case: 'a reserved name', name: 'CON', kept: 'CON' },
    { case: 'a reserved name with an end', name: 'nul.pdf', kept: 'nul.pdf' },
    { case: 'a beginning that spreadsheets take for a formula', name: '=1+1.pdf', kept: '=1+1.pdf' },
    { case: 'right-to-left letters', name: 'קבלה.pdf', kept: 'קבלה.pdf' },
    { case: 'as long as it may be', name: 'x'.repeat(120), kept: 'x'.repeat(120) },
  ])('under $case', async ({ name, kept }) => {
    const host = await openHouseholdWithPip();
    expect(await keep(host, name)).toMatchObject({ ok: true, value: { paper: { name: kept } } });
    expect(filesOf(host)).toHaveLength(2);
    expect(await host.must('household.examine', {})).toMatchObject({ papers: 1, faults: [] });
  });

  test.each([
    { case: 'a NUL', name: 'a\0.pdf', code: 'control-characters' },
    { case: 'a line\'s end', name: 'a\n.pdf', code: 'control-characters' },
    { case: 'a character that turns the writing round', name: 'fdp.\u202etxt', code: 'control-characters' },
    { case: 'half a character', name: 'a\ud800.pdf', code: 'control-characters' },
    { case: 'too many letters', name: 'x'.repeat(121), code: 'text-too-long' },
    { case: 'nothing', name: ' ', code: 'text-empty' },
  ])('is refused under a name of $case, and no bytes are kept', async ({ name, code }) => {
    const host = await openHouseholdWithPip();
    expect(await keep(host, name)).toMatchObject({ ok: false, refusal: { code, path: ['name'] } });
    expect(filesOf(host)).toEqual([]);
  });

  test.each([
    { case: 'none', base64: '', code: 'paper-empty' },
    { case: 'letters that are not base64', base64: '****', code: 'paper-not-base64' },
    { case: 'one letter short', base64: 'AAAAA', code: 'paper-not-base64' },
    { case: 'padding in the middle', base64: 'AA==AAAA', code: 'paper-not-base64' },
    { case: 'too much padding', base64: 'A===', code: 'paper-not-base64' },
    { case: 'line ends', base64: 'AAAA\nAAAA', code: 'paper-not-base64' },
    { case: 'the other base64', base64: 'AA-_', code: 'paper-not-base64' },
    { case: 'padding alone', base64: '====', code: 'paper-not-base64' },
    { case: 'too much of it', base64: 'A'.repeat(33_333_340), code: 'paper-too-large' },
    { case: 'a broken image', base64: png(9, 9).subarray(0, 50).toString('base64'), code: 'paper-broken' },
  ])('is refused with bytes of $case, and nothing is kept', async ({ base64, code }) => {
    const host = await openHouseholdWithPip();
    expect(await host.call('paper.keep', { name: 'receipt.pdf', base64 })).toMatchObject({ ok: false, refusal: { code } });
    expect(filesOf(host)).toEqual([]);
    expect(await host.must('household.examine', {})).toMatchObject({ entries: 4, papers: 0, faults: [] });
  });

  test('is refused before there is a household', async () => {
    const host = openTestHost();
    expect(await keep(host, 'receipt.pdf')).toMatchObject({ ok: false, refusal: { code: 'household-not-started' } });
    expect(filesOf(host)).toEqual([]);
  });
});

describe('the same bytes twice', () => {
  test('are one paper, with the name it first had, and nothing to undo', async () => {
    const host = await openHouseholdWithPip();
    const first = await host.must('paper.keep', { name: 'first.txt', base64: 'AAAA' });
    const second = await host.must('paper.keep', { name: 'second.txt', base64: 'AAAA' });
    expect(second).toEqual({ paper: first.paper, known: true, uses: [], undo: [] });
    expect(first.undo).toEqual([4]);
    expect(await host.must('household.examine', {})).toMatchObject({ entries: 5, papers: 1, faults: [] });
  });

  test('put back a paper whose file was lost or altered', async () => {
    const host = await openHouseholdWithPip();
    const { paper } = await host.must('paper.keep', { name: 'first.txt', base64: 'AAAA' });
    for (const harm of [() => rmSync(paperPath(host.folder, paper.id)), () => writeFileSync(paperPath(host.folder, paper.id), 'other')]) {
      harm();
      expect((await host.must('household.examine', {})).faults).toHaveLength(1);
      await host.must('paper.keep', { name: 'again.txt', base64: 'AAAA' });
      expect((await host.must('household.examine', {})).faults).toEqual([]);
    }
  });

  test('after the first was withdrawn are a paper again', async () => {
    const host = await openHouseholdWithPip();
    const first = await host.must('paper.keep', { name: 'first.txt', base64: 'AAAA' });
    await host.must('entry.withdraw', { entries: [...first.undo] });
    expect(await host.must('paper.keep', { name: 'second.txt', base64: 'AAAA' })).toMatchObject({ paper: { name: 'second.txt' }, undo: [6] });
    expect(await host.must('household.examine', {})).toMatchObject({ papers: 1, faults: [] });
  });

  test('kept at once are one paper', async () => {
    const host = await openHouseholdWithPip();
    const replies = await Promise.all(['a', 'b', 'c'].map((name) => keep(host, name, 'the same')));
    expect(replies.map((reply) => reply.ok)).toEqual([true, true, true]);
    expect(await host.must('household.examine', {})).toMatchObject({ entries: 5, papers: 1, faults: [] });
  });
});

describe('a paper that stands upon nothing', () => {
  test('is shown only while it is kept and whole', async () => {
    const host = await openHouseholdWithPip();
    const find = (sha256: string) => paperFinder(host.composed)({ sha256, part: 'whole' });
    const { paper, undo } = await host.must('paper.keep', { name: 'p.png', base64: png(2, 2).toString('base64') });
    expect(await find(paper.id)).toMatchObject({ mediaType: 'image/png' });
    writeFileSync(paperPath(host.folder, paper.id), 'other');
    expect(await find(paper.id)).toBeNull();
    writeFileSync(paperPath(host.folder, paper.id), png(2, 2));
    await host.must('entry.withdraw', { entries: [...undo] });
    expect(await find(paper.id)).toBeNull();
    expect(await find('../../key')).toBeNull();
  });

  test('used by a record, it can no longer be withdrawn', async () => {
    const host = await openHouseholdWithPip();
    const { paper, undo } = await host.must('paper.keep', { name: 'p.txt', base64: 'AAAA' });
    await host.must('record.add', { car: 'pip', lines: [{ name: 'Bulb' }], papers: [paper.id] });
    expect(await host.call('entry.withdraw', { entries: [...undo] })).toMatchObject({ ok: false, refusal: { code: 'entry-in-use' } });
  });
});
