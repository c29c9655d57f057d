import { describe, expect, test } from 'vitest';
import type { Push } from '../../shared-core/contract/push.ts';
import { day, openHouseholdWithPip, openTestHost, type TestHost } from './open-test-host.ts';

const TABLE = 'date,miles,work,cost\n2025-06-01,22000,,\n2025-09-01,24500,Brake fluid; wash,49.90\n2025-10-01,2450,,\n2025-13-01,1,,\n';

async function household(): Promise<TestHost> {
  const host = await openHouseholdWithPip();
  await host.must('item.add', { id: 'fluid', car: 'pip', name: 'Brake fluid', history: 'unknown', interval: { repeat: { months: 24, distance: null } } });
  return host;
}

/** All that the screens show, and what stands in the journal. */
const shown = async (host: TestHost) => ({ due: await host.must('due.show', {}), car: await host.must('car.show', { car: 'pip' }), imports: await host.must('import.list', {}) });
const entries = async (host: TestHost) => (await host.must('household.examine', {})).entries;

describe('an import through a real file', () => {
  test('stores nothing by its preview', async () => {
    const host = await household();
    const before = await entries(host);
    expect(await host.must('import.preview', { text: TABLE, name: 'old.csv' })).toMatchObject({ ready: true, file: 'old.csv', counts: { rows: 4, stored: 2, setAside: 1, refused: 1, readings: 3, records: 1 } });
    expect(await entries(host)).toBe(before);
  });

  test('is kept whole, examined without a fault, and withdrawn in one step by its undo token', async () => {
    const host = await household();
    const [before, number] = [await shown(host), await entries(host)];
    const view = await host.must('import.preview', { text: TABLE, name: 'C:\\old\\old.csv' });
    const kept = await host.must('import.keep', { text: TABLE, name: 'C:\\old\\old.csv', digest: view.digest, outcome: view.outcome });
    expect(kept).toMatchObject({ counts: { readings: 3, records: 1 }, rows: [{ line: 4, state: 'set-aside', code: 'doubt-decrease' }, { line: 5, code: 'import-not-a-date' }] });
    expect(kept.undo).toEqual([0, 1, 2, 3, 4].map((one) => number + one));
    const car = await host.must('car.show', { car: 'pip' });
    expect(car.records).toMatchObject([{ record: { title: 'Brake fluid; wash', reconstructed: true }, totalMinor: 4990 }]);
    expect((await host.must('due.show', {})).cars[0]).toMatchObject({ doubtful: [{ value: 2450 }], windows: [{ item: 'fluid', state: 'ahead' }] });
    expect(await host.must('import.list', {})).toMatchObject({ imports: [{ id: kept.import, file: 'old.csv', on: '2026-11-25', readings: 3, records: 1, digest: view.digest }] });
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [], entries: number + 5 });
    await host.must('entry.withdraw', { entries: [...kept.undo] });
    expect(await shown(host)).toEqual(before);
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  });

  test('the very same file, read another way, is not taken in again unless that is said', async () => {
    const host = await household();
    const text = 'date,miles\n2026-02-03,26000\n'.replace('2026-02-03', '03/02/2026');
    const kept = await host.must('import.keep', { text, dateOrder: 'dmy' });
    const before = await entries(host);
    const again = { text, dateOrder: 'mdy' } as const;
    expect(await host.call('import.keep', again)).toMatchObject({ ok: false, refusal: { code: 'import-file-known', values: { on: '2026-11-25', import: kept.import } } });
    expect(await entries(host)).toBe(before);
    expect(await host.must('import.keep', { ...again, again: true })).toMatchObject({ counts: { stored: 1 } });
    const other = await household();
    const first = await other.must('import.keep', { text, dateOrder: 'dmy' });
    await other.must('import.withdraw', { id: first.import });
    expect(await other.must('import.keep', again)).toMatchObject({ counts: { stored: 1 } });
  });

  test('is withdrawn by its id much later, after the program was closed', async () => {
    const first = await household();
    const before = await shown(first);
    const kept = await first.must('import.keep', { text: TABLE });
    await first.composed.close();
    const host = openTestHost({ folder: first.folder, on: '2026-12-24' });
    await host.must('supplier.set', { id: 'north', name: 'North', leadDays: 3 });
    expect(await host.must('import.withdraw', { id: kept.import })).toMatchObject({ withdrawn: 5 });
    expect((await shown(host)).car.records).toEqual(before.car.records);
    expect(await host.must('import.list', {})).toEqual({ imports: [] });
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
    expect(await host.call('import.withdraw', { id: kept.import })).toMatchObject({ ok: false, refusal: { code: 'unknown-import' } });
  });

  test('of which one entry was withdrawn before is withdrawn with the rest', async () => {
    const host = await household();
    const kept = await host.must('import.keep', { text: TABLE });
    await host.must('entry.withdraw', { entries: [kept.undo.at(-1) ?? -1] });
    expect(await host.must('import.withdraw', { id: kept.import })).toMatchObject({ withdrawn: 4 });
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  });

  test('stays while something stands upon it, and nothing of it is half gone', async () => {
    const host = await household();
    const kept = await host.must('import.keep', { text: TABLE });
    const doubtful = (await host.must('due.show', {})).cars[0]?.doubtful[0];
    const settled = await host.must('reading.settle', { reading: doubtful?.reading ?? '', verdict: 'wrong' });
    const before = await shown(host);
    expect(await host.call('import.withdraw', { id: kept.import })).toMatchObject({ ok: false, refusal: { code: 'entry-in-use', values: { by: settled.undo[0] } } });
    expect(await shown(host)).toEqual(before);
    await host.must('entry.withdraw', { entries: [...settled.undo] });
    expect(await host.must('import.withdraw', { id: kept.import })).toMatchObject({ withdrawn: 5 });
  });

  test('tells the windows once what changed', async () => {
    const host = await household();
    const pushes: Push[] = [];
    host.composed.onPush((push) => void pushes.push(push));
    await host.must('import.preview', { text: TABLE });
    expect(pushes).toEqual([]);
    const { import: id } = await host.must('import.keep', { text: TABLE });
    await host.must('import.withdraw', { id });
    expect(pushes).toEqual([1, 2].map(() => ({ kind: 'changed', stages: ['fleet', 'records'], cars: ['pip'] })));
  });
});

describe('a file that is taken in already', () => {
  test('is said to be there, and since when', async () => {
    const host = await household();
    const whole = 'date,miles\n2025-11-01,26000\n';
    const { import: id } = await host.must('import.keep', { text: whole });
    const [kept] = (await host.must('import.list', {})).imports;
    expect(await host.call('import.keep', { text: whole })).toMatchObject({ ok: false, refusal: { code: 'import-all-there-since', values: { rows: 1, on: kept?.on } } });
    await host.must('import.keep', { text: TABLE });
    expect(await host.call('import.keep', { text: TABLE })).toMatchObject({ ok: false, refusal: { code: 'import-nothing-new-since', values: { rows: 4, there: 3, refused: 1 } } });
    await host.must('import.withdraw', { id });
    expect((await host.call('import.keep', { text: whole })).ok).toBe(true);
  });

  test('with other bytes: its rows are there', async () => {
    const host = await household();
    await host.must('import.keep', { text: 'date,miles\n2025-11-01,26000\n' });
    expect(await host.call('import.keep', { text: 'date,miles\n2025-11-01,26000\n\n' })).toMatchObject({ ok: false, refusal: { code: 'import-all-there', values: { rows: 1 } } });
    expect(await host.call('import.keep', { text: 'date,miles\n2025-11-01,26000\n2025-13-01,1\n' })).toMatchObject({ ok: false, refusal: { code: 'import-nothing-new', values: { rows: 2, there: 1, refused: 1 } } });
  });
});

describe('an import is refused, and stores nothing,', () => {
  const REFUSED = [
    { case: 'of another file than was looked at', change: { text: `${TABLE}2025-11-01,26000,,\n` }, code: 'import-file-changed' },
    { case: 'of the same file with one byte more', change: { text: `${TABLE}\n` }, code: 'import-file-changed' },
    { case: 'read in another way than was looked at', change: { columns: { cost: null } }, code: 'import-outcome-changed' },
    { case: 'with something open', change: { text: 'date,miles\n3/4/2025,20000\n', digest: null }, code: 'import-questions-open' },
    { case: 'of rows that are all refused', change: { text: 'date,miles\n2025-13-01,1\n', digest: null, outcome: null }, code: 'import-nothing' },
    { case: 'of both text and bytes', change: { base64: 'eA==' }, code: 'import-text-or-bytes' },
    { case: 'of neither', change: { text: null }, code: 'import-text-or-bytes' },
    { case: 'of bytes that are no base64', change: { text: null, base64: '*' }, code: 'paper-not-base64' },
    { case: 'of a spreadsheet', change: { text: null, base64: 'UEsDBBQ=' }, code: 'import-spreadsheet' },
    { case: 'of more than 20 megabytes', change: { text: 'é'.repeat(10_000_001), digest: null }, code: 'import-file-large' },
    { case: 'with a delimiter that is none', change: { delimiter: 'x' as never }, code: 'import-delimiter' },
  ] as const;

  test.each(REFUSED)('$case', async ({ change, code }) => {
    const host = await household();
    const view = await host.must('import.preview', { text: TABLE });
    const before = await entries(host);
    expect(await host.call('import.keep', { text: TABLE, digest: view.digest, outcome: view.outcome, ...change } as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(await entries(host)).toBe(before);
  });

  test('where something was entered since that makes a row another', async () => {
    const host = await household();
    const view = await host.must('import.preview', { text: TABLE });
    await host.must('reading.record', { car: 'pip', value: 21_900, date: day('2025-08-01') });
    expect(await host.call('import.keep', { text: TABLE, digest: view.digest, outcome: view.outcome })).toMatchObject({ ok: false, refusal: { code: 'import-outcome-changed' } });
  });

  test('where there is no car yet', async () => {
    const host = openTestHost();
    await host.must('household.start', {});
    expect(await host.call('import.preview', { text: TABLE })).toMatchObject({ ok: false, refusal: { code: 'import-no-car' } });
  });
});

describe('a table in an old encoding', () => {
  test('is read by its bytes', async () => {
    const host = await household();
    const text = 'date,miles,work,garage,cost\n2025-09-01,24500,Brake fluid,Café du Garage,"49,90 €"\n';
    const base64 = Buffer.from(text.replace('€', '£'), 'latin1').toString('base64');
    expect(await host.must('import.preview', { base64 })).toMatchObject({ detected: { encoding: 'Windows-1252' }, first: [{ placeName: 'Café du Garage', costMinor: 4990 }] });
    const utf16 = Buffer.from(`\ufeff${text}`, 'utf16le').toString('base64');
    expect(await host.must('import.preview', { base64: utf16 })).toMatchObject({ detected: { encoding: 'UTF-16LE' }, rows: [{ code: 'import-currency', cells: expect.arrayContaining(['49,90 €']) as string[] }] });
  });

  test('of very many rows is kept and withdrawn as one', async () => {
    const host = await household();
    const rows = Array.from({ length: 3000 }, (_, at) => `${new Date(Date.UTC(2023, 0, 1 + Math.floor(at / 3))).toISOString().slice(0, 10)},${100 + at * 3}`);
    const kept = await host.must('import.keep', { text: `date,miles\n${rows.join('\n')}\n` });
    expect(kept.counts).toMatchObject({ rows: 3000, refused: 0 });
    expect(kept.undo).toHaveLength(3001);
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
    expect(await host.must('import.withdraw', { id: kept.import })).toMatchObject({ withdrawn: 3001 });
  });
});

describe('the imports that stand', () => {
  test('are listed with nothing that holds them, the latest first', async () => {
    const host = await household();
    const { import: first } = await host.must('import.keep', { text: 'date,miles\n2025-06-01,22000\n', name: 'a.csv' });
    const { import: second } = await host.must('import.keep', { text: 'date,miles\n2025-07-01,22600\n', name: 'b.csv' });
    expect(await host.must('import.standing', {})).toMatchObject({ imports: [{ id: second, file: 'b.csv', held: null }, { id: first, file: 'a.csv', held: null }] });
  });

  test('say which entry stands upon one, and no other import is held by it', async () => {
    const host = await household();
    await host.must('import.keep', { text: TABLE });
    await host.must('import.keep', { text: 'date,miles\n2025-07-01,22600\n' });
    const doubtful = (await host.must('due.show', {})).cars[0]?.doubtful[0];
    const settled = await host.must('reading.settle', { reading: doubtful?.reading ?? '', verdict: 'wrong' });
    const { imports } = await host.must('import.standing', {});
    expect(imports).toMatchObject([{ held: null }, { held: { by: 'entry', entry: settled.undo[0], car: 'Pip' } }]);
    await host.must('entry.withdraw', { entries: [...settled.undo] });
    expect((await host.must('import.standing', {})).imports).toMatchObject([{ held: null }, { held: null }]);
  });

  test('are held by the seal of a history pack that went out with them, as withdrawing says too', async () => {
    const host = await household();
    const { import: id } = await host.must('import.keep', { text: TABLE });
    await host.must('pack.write', { car: 'pip' });
    expect(await host.must('import.standing', {})).toMatchObject({ imports: [{ id, held: { by: 'seal', entry: null } }] });
    expect(await host.call('import.withdraw', { id })).toMatchObject({ ok: false, refusal: { code: 'entry-sealed' } });
  });
});

describe('a preview', () => {
  test('says what each car would be brought, and which items a text may mean', async () => {
    const host = await household();
    await host.must('car.add', { id: 'alder', name: 'Alder', unit: 'mi' });
    const { cars } = await host.must('import.preview', { text: `car,${TABLE.replace(/\n(?=.)/g, '\npip,')}`, name: 'old.csv' });
    expect(cars).toEqual([
      { id: 'alder', name: 'Alder', registration: null, readings: 0, records: 0, items: [] },
      { id: 'pip', name: 'Pip', registration: null, readings: 3, records: 1, items: [{ id: 'fluid', name: 'Brake fluid' }] },
    ]);
  });
});
