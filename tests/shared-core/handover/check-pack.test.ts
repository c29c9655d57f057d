import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkPack } from '../../../shared-core/handover/check-pack.ts';
import type { CheckReport } from '../../../shared-core/handover/check-report.ts';
import { HISTORY, PUBLIC_KEY, ROWS, SEAL, SEAL_TEXT, SIGNATURE, SIGNED_CONTENTS } from '../../../shared-core/handover/pack-files.ts';
import { publicKeyText } from '../../../shared-core/handover/public-key-text.ts';
import { canonicalJson } from '../../../shared-core/journal/canonical-json.ts';
import { hexText } from '../../../shared-core/journal/hex-text.ts';
import type { Seal } from '../../../shared-core/journal/seal.ts';
import { sealText } from '../../../shared-core/journal/seal-text.ts';
import type { Pack, PackInput } from '../../../shared-core/handover/compose-pack.ts';
import { bytesOf, DIGESTS, foundIn, householdKey, journal, pipPack, sealOf, TOOLS } from './pack-fixture.ts';
import { textFile } from '../../../shared-core/handover/pack-files.ts';

type Files = Map<string, Buffer>;

function check(files: Files, givenSeal: Seal | null = null): CheckReport {
  return checkPack({ found: foundIn(files), container: [], excused: new Set(), base: null, givenSeal }, TOOLS);
}

function checkOf(pack: Pack, givenSeal: Seal | null = null): CheckReport {
  return check(bytesOf(pack), givenSeal);
}

/** The faults of the pack of pip after its files were altered by hand. */
function altered(change: (files: Files) => void, pack = pipPack()): CheckReport {
  const files = bytesOf(pack);
  change(files);
  return check(files);
}

function codes(report: CheckReport): string[] {
  return report.faults.map(({ code, path, row }) => `${code} ${path ?? '-'}${row === null ? '' : ` row ${row}`}`);
}

const json = (files: Files, path: string): unknown => JSON.parse(files.get(path)?.toString() ?? '');

describe('an untouched pack', () => {
  test('has no fault, names its rows and says what cannot be told', () => {
    const report = checkOf(pipPack());
    expect(report.faults).toEqual([]);
    expect(report.warnings).toEqual([]);
    expect(report.notes.map((note) => note.key)).toEqual(['note-no-given-seal']);
    expect(report).toMatchObject({ name: 'pip-2026-11-25', composedOn: '2026-11-25', rows: 4, withheld: [], seal: { treeSize: 6 } });
  });

  test('says so when it is of the sample', () => {
    expect(checkOf(pipPack({ sample: true })).notes.map((note) => note.key)).toContain('note-sample');
  });

  test('holds no row of another car', () => {
    const text = [...bytesOf(pipPack()).values()].map(String).join('\n');
    expect(text).toContain('pip');
    expect(text).not.toContain('moth');
    expect(text).not.toContain('90000000');
  });

  test('is the same bytes each time', () => {
    expect([...bytesOf(pipPack())]).toEqual([...bytesOf(pipPack())]);
  });
});

describe('fields that are withheld', () => {
  const fields = journal().flatMap(({ row }) => (row.subject === 'car/pip' ? Object.keys(row.fields).map((name) => `${row.seq} ${name}`) : []));

  test('any of them: every proof holds, each is named, and no value of it is left', () => {
    fc.assert(
      fc.property(fc.subarray(fields), (hidden) => {
        const pack = pipPack({ show: (row, name) => !hidden.includes(`${row.seq} ${name}`) });
        const report = checkOf(pack);
        expect(report.faults).toEqual([]);
        expect(report.withheld.map(({ row, field }) => `${row} ${field}`).sort()).toEqual([...hidden].sort());
        const text = [...bytesOf(pack).values()].map(String).join('\n');
        expect(text.includes('Oil and filter')).toBe(!hidden.includes('5 title'));
        expect(text.includes('"amountMinor":4250')).toBe(!hidden.includes('5 costs'));
      }),
      { numRuns: 60 },
    );
  });

  test('an erased value is withheld for good', () => {
    const kept = journal().map((entry) => (entry.row.seq === 5 ? { ...entry, kept: { ...entry.kept, costs: null } } : entry));
    const report = checkOf(pipPack({ kept }));
    expect(report.faults).toEqual([]);
    expect(report.withheld).toEqual([{ row: 5, field: 'costs' }]);
  });
});

describe('a file altered by hand', () => {
  const paths = [...bytesOf(pipPack()).keys()];

  test.each(paths)('any byte of %s', (path) => {
    const whole = bytesOf(pipPack()).get(path) ?? Buffer.alloc(0);
    fc.assert(
      fc.property(fc.nat({ max: Math.max(0, whole.length - 1) }), fc.integer({ min: 1, max: 255 }), (at, flip) => {
        if (whole.length === 0) return;
        const report = altered((files) => files.set(path, Buffer.from(whole.with(at, (whole[at] ?? 0) ^ flip))));
        expect(codes(report).filter((line) => line.startsWith(`changed ${path}`))).not.toEqual([]);
        expect(new Set(report.faults.map((fault) => fault.path))).toEqual(new Set([path]));
      }),
      { numRuns: 25 },
    );
  });

  test.each(paths)('%s taken away', (path) => {
    expect(codes(altered((files) => files.delete(path)))).toContain(`missing ${path}`);
  });

  test.each(paths.filter((path) => path !== 'data/empty.csv'))('%s emptied', (path) => {
    const named = codes(altered((files) => files.set(path, Buffer.alloc(0))));
    expect(named.some((line) => line.endsWith(` ${path}`))).toBe(true);
  });

  test.each([
    { case: 'added', change: (files: Files) => files.set('data/new.txt', Buffer.from('new')), named: ['added data/new.txt'] },
    { case: 'added beside data', change: (files: Files) => files.set('fetch.txt', Buffer.from('')), named: ['added fetch.txt'] },
    {
      case: 'renamed',
      change: (files: Files) => {
        files.set('data/other.pdf', files.get('data/history.pdf') ?? Buffer.alloc(0));
        files.delete('data/history.pdf');
      },
      named: ['renamed data/history.pdf'],
    },
    {
      case: 'swapped',
      change: (files: Files) => {
        const [one, other] = [files.get('data/history.pdf'), files.get('data/papers/receipt.jpg')];
        files.set('data/history.pdf', other ?? Buffer.alloc(0));
        files.set('data/papers/receipt.jpg', one ?? Buffer.alloc(0));
      },
      named: ['reordered data/history.pdf', 'reordered data/papers/receipt.jpg'],
    },
    { case: 'cut short', change: (files: Files) => files.set('data/history.pdf', (files.get('data/history.pdf') ?? Buffer.alloc(0)).subarray(0, 9)), named: ['truncated data/history.pdf'] },
  ])('$case, and nothing else is named', ({ change, named }) => {
    expect(codes(altered(change))).toEqual(named);
  });

  test('a changed value is named by its row too', () => {
    const report = altered((files) => files.set(ROWS, Buffer.from((files.get(ROWS)?.toString() ?? '').replace('"Oil and filter"', '"Oil and FILTER"'))));
    expect(codes(report)).toEqual([`changed ${ROWS}`, `changed ${ROWS} row 5`]);
  });
});

/** The same pack with a file replaced and both manifests made to fit, as someone without the key could do. */
function refitted(path: string, edit: (text: string) => string): CheckReport {
  return altered((files) => {
    files.set(path, Buffer.from(edit(files.get(path)?.toString() ?? '')));
    const sha = (name: string) => foundIn(new Map([[name, files.get(name) ?? Buffer.alloc(0)]]))[0]?.sha512 ?? '';
    for (const manifest of ['manifest-sha512.txt', 'tagmanifest-sha512.txt']) {
      const lines = (files.get(manifest)?.toString() ?? '').split('\n').map((line) => (line === '' ? '' : `${sha(line.slice(130))}  ${line.slice(130)}`));
      files.set(manifest, Buffer.from(lines.join('\n')));
    }
  });
}

describe('a file altered and both manifests made to fit', () => {
  test('is named by the signed list, and the manifest with it', () => {
    expect(codes(refitted('data/history.pdf', (text) => text.replace('drawn', 'DRAWN')))).toEqual(['changed data/history.pdf', 'changed manifest-sha512.txt']);
    expect(codes(refitted('bag-info.txt', (text) => text.replace('2026', '2025')))).toEqual(['changed bag-info.txt']);
  });

  test('the signed list itself: its signature is bad', () => {
    expect(codes(refitted(SIGNED_CONTENTS, (text) => text.replace('"composedOn":"2026', '"composedOn":"2025')))).toEqual([`bad-signature ${SIGNED_CONTENTS}`]);
    expect(codes(refitted(SIGNATURE, () => 'x'.repeat(64)))).toEqual([`bad-signature ${SIGNED_CONTENTS}`]);
  });

  test.each(['2', '9', '10', '19', '20', '101'])('the signed list of a later form, %s, is told as such', (form) => {
    const report = refitted(SIGNED_CONTENTS, (text) => text.replace('trunnion-pack-1', `trunnion-pack-${form}`));
    expect(report.faults).toMatchObject([{ code: 'not-a-pack', path: SIGNED_CONTENTS, message: { key: 'fault-newer-form' } }]);
  });

  test.each(['0', '01', '02', '1x', '-2'])('the signed list of a form that there is not, %s, is told as another', (form) => {
    const report = refitted(SIGNED_CONTENTS, (text) => text.replace('trunnion-pack-1', `trunnion-pack-${form}`));
    expect(report.faults).toMatchObject([{ code: 'not-a-pack', path: SIGNED_CONTENTS, message: { key: 'fault-wrong-form' } }]);
  });
});

/** A pack composed and signed by the household itself, its journal's files altered before signing: only proofs can tell. */
function signedOver(change: { rows?: (rows: never) => void; seal?: (seal: never) => void; history?: (history: never) => void }): CheckReport {
  const pack = pipPack({
    change: (input) => {
      const copy = structuredClone({ entries: input.entries, seal: input.seal });
      change.rows?.(copy.entries as never);
      change.seal?.(copy.seal as never);
      return { ...input, ...copy };
    },
  });
  if (change.history === undefined) return checkOf(pack);
  return resigned(pack, (files) => {
    const history = json(files, HISTORY);
    change.history?.(history as never);
    files.set(HISTORY, Buffer.from(canonicalJson(history)));
  });
}

/** Alters files of a composed pack and signs again with the household's key, manifests and all. */
function resigned(pack: Pack, change: (files: Files) => void, key = householdKey()): CheckReport {
  const files = bytesOf(pack);
  change(files);
  const sha = (path: string) => foundIn(new Map([[path, files.get(path) ?? Buffer.alloc(0)]]))[0]?.sha512 ?? '';
  const manifest = (paths: string[]) => Buffer.from(paths.sort().map((path) => `${sha(path)}  ${path}\n`).join(''));
  files.set('manifest-sha512.txt', manifest([...files.keys()].filter((path) => path.startsWith('data/'))));
  const bytes = [...files].reduce((sum, [path, content]) => sum + (path.startsWith('data/') ? content.length : 0), 0);
  files.set('bag-info.txt', Buffer.from((files.get('bag-info.txt')?.toString() ?? '').replace(/Oxum: \d+/, `Oxum: ${bytes}`)));
  const contents = json(files, SIGNED_CONTENTS) as { files: Record<string, string> };
  for (const path of Object.keys(contents.files)) contents.files[path] = sha(path);
  files.set(SIGNED_CONTENTS, Buffer.from(canonicalJson(contents)));
  files.set(SIGNATURE, Buffer.from(key.sign(files.get(SIGNED_CONTENTS) ?? Buffer.alloc(0))));
  files.set('tagmanifest-sha512.txt', manifest(['bagit.txt', 'bag-info.txt', 'manifest-sha512.txt', SIGNED_CONTENTS, SIGNATURE]));
  return check(files);
}

interface EditableEntry {
  row: { seq: number; at: string; prev: string };
  proof: string[];
  shown: Record<string, { salt: string; value: unknown }>;
  withheld: string[];
}
interface EditableSeal {
  seal: Seal;
  publicKey: string;
  earlier: { seal: Seal; proof: string[] }[];
}
interface EditableHistory {
  composedOn: string;
  papers: { path: string; sha256: string }[];
  records: { row: number; entered: string; kind: string; values: Record<string, unknown>; withheld: string[] }[];
}

describe('a journal altered and signed over by its own household', () => {
  const other = '0'.repeat(64);
  test.each<{ case: string; rows?: (rows: EditableEntry[]) => void; seal?: (seal: EditableSeal) => void; named: string[] }>([
    { case: 'the moment of a row', rows: (rows) => rows.forEach((entry) => entry.row.seq === 2 && (entry.row.at = '2026-01-01T09:00:00.000Z')), named: [`wrong-proof ${ROWS} row 2`, `wrong-proof ${ROWS} row 3`] },
    { case: 'a value', rows: (rows) => rows.forEach((entry) => entry.row.seq === 2 && (entry.shown['shown'] = { salt: entry.shown['shown']?.salt ?? '', value: 1 })), named: [`changed ${ROWS} row 2`] },
    { case: 'a salt', rows: (rows) => rows.forEach((entry) => entry.row.seq === 0 && (entry.shown['name'] = { salt: 'f'.repeat(32), value: 'Pip' })), named: [`changed ${ROWS} row 0`] },
    { case: 'a step of a proof', rows: (rows) => rows[0]?.proof.splice(0, 1, other), named: [`wrong-proof ${ROWS} row 0`] },
    { case: 'a proof cut short', rows: (rows) => rows[1]?.proof.pop(), named: [`wrong-proof ${ROWS} row 2`] },
    { case: 'a field hidden without being named', rows: (rows) => delete rows[0]?.shown['year'], named: [`missing ${ROWS} row 0`] },
    { case: 'a field named that the row has not', rows: (rows) => rows[0]?.withheld.push('colour'), named: [`added ${ROWS} row 0`] },
    { case: 'a field both shown and named as withheld', rows: (rows) => rows[0]?.withheld.push('year'), named: [`added ${ROWS} row 0`] },
    { case: 'the size of the seal', seal: ({ seal }) => Object.assign(seal, { treeSize: 7 }), named: [`bad-signature ${SEAL}`, `wrong-proof ${ROWS} row 5`] },
    { case: 'the root of the seal', seal: ({ seal }) => Object.assign(seal, { root: other }), named: [`bad-signature ${SEAL}`, `wrong-root ${SEAL}`] },
    { case: 'the signature of the seal', seal: ({ seal }) => Object.assign(seal, { signature: '0'.repeat(128) }), named: [`bad-signature ${SEAL}`] },
    { case: 'the fingerprint of the seal', seal: ({ seal }) => Object.assign(seal, { keyFingerprint: other }), named: [`bad-signature ${SEAL}`] },
  ])('$case', ({ rows, seal, named }) => {
    const change = { ...(rows === undefined ? {} : { rows: rows as (rows: never) => void }), ...(seal === undefined ? {} : { seal: seal as (seal: never) => void }) };
    expect(codes(signedOver(change))).toEqual(named);
  });

  test.each<{ case: string; history: (history: EditableHistory) => void; named: string[] }>([
    { case: 'a value', history: ({ records }) => Object.assign(records[3]?.values ?? {}, { title: 'Nothing' }), named: [`changed ${HISTORY} row 5`] },
    { case: 'a value left out', history: ({ records }) => delete records[3]?.values['title'], named: [`changed ${HISTORY} row 5`] },
    { case: 'a value put in', history: ({ records }) => Object.assign(records[3]?.values ?? {}, { extra: 1 }), named: [`changed ${HISTORY} row 5`] },
    { case: 'the moment of entry', history: ({ records }) => Object.assign(records[1] ?? {}, { entered: '2026-03-01T08:00:00.000Z' }), named: [`wrong-date ${HISTORY} row 2`] },
    { case: 'the kind', history: ({ records }) => Object.assign(records[1] ?? {}, { kind: 'work-recorded' }), named: [`changed ${HISTORY} row 2`] },
    { case: 'a name among the withheld', history: ({ records }) => records[1]?.withheld.push('note'), named: [`changed ${HISTORY} row 2`] },
    { case: 'a record left out', history: ({ records }) => records.splice(1, 1), named: [`missing ${HISTORY} row 2`] },
    { case: 'a record put in', history: ({ records }) => records.push({ ...(records[0] as EditableHistory['records'][0]), row: 9 }), named: [`added ${HISTORY} row 9`] },
    { case: 'records out of order', history: ({ records }) => records.reverse(), named: [3, 2, 0].map((row) => `reordered ${HISTORY} row ${row}`) },
    { case: 'the date of the pack', history: (history) => Object.assign(history, { composedOn: '2026-11-24' }), named: [`wrong-date ${HISTORY}`] },
    { case: 'the digest of a paper', history: ({ papers }) => Object.assign(papers[0] ?? {}, { sha256: other }), named: ['changed data/papers/receipt.jpg'] },
  ])('records that say otherwise: $case', ({ history, named }) => {
    expect(codes(signedOver({ history: history }))).toEqual(named);
  });

  test('the list of files signed with another key than the journal, or over another head', () => {
    const other = householdKey(1);
    const files = bytesOf(pipPack());
    const swapped = (key: typeof other, change: (contents: Record<string, unknown>) => void) =>
      resigned(pipPack(), (own) => {
        const contents = json(files, SIGNED_CONTENTS) as Record<string, unknown>;
        change(contents);
        own.set(SIGNED_CONTENTS, Buffer.from(canonicalJson(contents)));
      }, key);
    expect(codes(swapped(other, (contents) => Object.assign(contents, { publicKey: hexText(other.publicKey) })))).toEqual([`bad-signature ${SEAL}`]);
    expect(codes(swapped(householdKey(), (contents) => Object.assign(contents, { treeSize: 5 })))).toEqual([`wrong-root ${SEAL}`]);
  });

  test.each([
    { case: 'the seal of another journal to read', path: SEAL_TEXT, text: `${sealText(sealOf(journal(), householdKey(1)))}\n` },
    { case: 'an earlier seal to read', path: SEAL_TEXT, text: `${sealText(sealOf(journal().slice(0, 3)))}\n` },
    { case: 'the key of another household for common tools', path: PUBLIC_KEY, text: publicKeyText(householdKey(1).publicKey) },
  ])('$case', ({ path, text }) => {
    expect(codes(resigned(pipPack(), (files) => files.set(path, Buffer.from(text))))).toEqual([`changed ${path}`]);
  });

  test('rows out of order', () => {
    const swap = resigned(pipPack(), (files) => {
      const rows = json(files, ROWS) as { entries: EditableEntry[] };
      rows.entries.reverse();
      files.set(ROWS, Buffer.from(canonicalJson(rows)));
    });
    expect(codes(swap)).toEqual([3, 2, 0].map((row) => `reordered ${ROWS} row ${row}`));
  });

  test('JSON with a name twice, or with other spacing, is not taken', () => {
    const spaced = resigned(pipPack(), (files) => files.set(SEAL, Buffer.from(` ${files.get(SEAL)?.toString() ?? ''}`)));
    expect(spaced.faults).toMatchObject([{ code: 'changed', path: SEAL, message: { key: 'fault-not-canonical' } }]);
    const twice = resigned(pipPack(), (files) => files.set(HISTORY, Buffer.from((files.get(HISTORY)?.toString() ?? '').replace('"sample":false', '"sample":true,"sample":false'))));
    expect(twice.faults).toMatchObject([{ code: 'changed', path: HISTORY, message: { key: 'fault-not-canonical' } }]);
  });

  test('a paper that no entry names is warned of', () => {
    const files = [textFile('data/papers/note.txt', 'never entered', DIGESTS)];
    const report = checkOf(pipPack({ files, change: (input) => ({ ...input, papers: [...input.papers, { path: 'data/papers/note.txt', sha256: files[0]?.sha256 ?? '', redactedFrom: null }] }) }));
    expect(report.faults).toEqual([]);
    expect(report.warnings).toEqual([{ key: 'warning-paper-unproven', values: { path: 'data/papers/note.txt' } }]);
  });
});

describe('a seal given before', () => {
  const early = sealOf(journal().slice(0, 3));

  test.each([
    { case: 'the pack’s own', seal: sealOf(journal()), earlier: [] },
    { case: 'an earlier one that the pack proves', seal: early, earlier: [early] },
  ])('agrees: $case', ({ seal, earlier }) => {
    const report = checkOf(pipPack({ earlier }), seal);
    expect(report.faults).toEqual([]);
    expect(report.notes.map((note) => note.key)).toEqual(['note-given-agrees']);
  });

  test('finds a pack that was rebuilt whole with a new key', () => {
    const rebuilt = pipPack({ key: householdKey(1) });
    expect(checkOf(rebuilt).faults).toEqual([]);
    expect(checkOf(rebuilt, sealOf(journal())).faults).toMatchObject([{ code: 'bad-signature', path: SEAL, message: { key: 'fault-given-other-key' } }]);
  });

  test('finds a journal rewritten with the same key', () => {
    const rewritten = pipPack({ kept: [...journal().slice(0, 1), ...journal().slice(0, 5)].map((entry, seq) => ({ ...entry, row: { ...entry.row, seq } })), change: (input) => ({ ...input, entries: input.entries.slice(0, 1), papers: [] }) });
    expect(checkOf(rewritten, sealOf(journal())).faults).toMatchObject([{ code: 'wrong-root', path: SEAL, message: { key: 'fault-given-root' } }]);
    expect(checkOf(rewritten, early).faults).toMatchObject([{ code: 'wrong-proof', path: SEAL, message: { key: 'fault-given-unproven' } }]);
  });

  test('finds an earlier seal that is of another journal, or whose proof is not one', () => {
    const forged = { ...early, root: '0'.repeat(64) };
    expect(codes(checkOf(pipPack({ earlier: [forged] })))).toEqual([`bad-signature ${SEAL}`]);
    const cut = (seal: EditableSeal) => seal.earlier[0]?.proof.pop();
    const report = checkOf(pipPack({ earlier: [early], change: (input) => { const seal = structuredClone(input.seal); cut(seal); return { ...input, seal }; } }));
    expect(codes(report)).toEqual([`wrong-proof ${SEAL}`]);
  });

  test('finds a journal that was forked before it, though the pack proves another seal of that size', () => {
    const fork = journal().slice(0, 3).map((entry) => ({ ...entry, row: { ...entry.row, at: '2026-01-01T00:00:00.000Z' } }));
    expect(checkOf(pipPack({ earlier: [early] }), sealOf(fork)).faults).toMatchObject([{ code: 'wrong-root', path: SEAL, message: { key: 'fault-given-root' } }]);
  });

  test('is not taken to agree on a proof that is none', () => {
    const change = (input: PackInput): PackInput => ({ ...input, seal: { ...input.seal, earlier: input.seal.earlier.map((one) => ({ ...one, proof: one.proof.slice(1) })) } });
    const report = checkOf(pipPack({ earlier: [early], change }), early);
    expect(report.faults.map((fault) => fault.message.key)).toEqual(['fault-earlier-unproven', 'fault-given-unproven']);
    expect(report.notes).toEqual([]);
  });

  test('newer than the pack says that it cannot tell', () => {
    const [last, ...rest] = journal().reverse();
    const longer = [...rest.reverse(), last as never, { ...(last as never as object), row: { ...(last as never as { row: object }).row, seq: 6 } } as never];
    const report = checkOf(pipPack(), sealOf(longer));
    expect(report.faults).toEqual([]);
    expect(report.notes.map((note) => note.key)).toEqual(['note-given-newer']);
  });

  test('that its own key did not sign is named', () => {
    expect(checkOf(pipPack(), { ...sealOf(journal()), signature: '0'.repeat(128) }).faults).toMatchObject([{ code: 'bad-signature', message: { key: 'fault-given-signature' } }]);
  });
});

describe('what is no pack', () => {
  test.each([
    { case: 'nothing', files: new Map<string, Buffer>() },
    { case: 'other files', files: new Map([['readme.txt', Buffer.from('hello')], ['data/x', Buffer.from('x')]]) },
  ])('$case', ({ files }) => {
    expect(codes(check(files))).toEqual(['not-a-pack -']);
  });

  test('the folder of a ZIP has the name of the pack', () => {
    const report = checkPack({ found: foundIn(bytesOf(pipPack())), container: [], excused: new Set(), base: 'other', givenSeal: null }, TOOLS);
    expect(report.faults).toMatchObject([{ code: 'container', path: null, message: { key: 'fault-base-renamed' } }]);
  });
});
