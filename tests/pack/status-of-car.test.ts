import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { historyPartSchema } from '../../shared-core/handover/history-part.ts';
import type { HistoryStatus } from '../../shared-core/handover/history-status.ts';
import type { StatusElement } from '../../shared-core/handover/status-input.ts';
import type { RequestOf } from '../../shared-core/contract/contract.ts';
import { must } from '../../shared-core/result/assert.ts';
import { day, openTestHost, temporaryFolder, type TestHost } from '../host/open-test-host.ts';
import { packTexts } from './pack-texts.ts';

/** A car with something of each element of status; what happened in 2024 is in capitals. */
async function household(): Promise<TestHost> {
  const host = openTestHost();
  await host.must('household.start', { name: 'Test household' });
  await host.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25') });
  const yearly = { repeat: { months: 12, distance: { value: 15_000, unit: 'km' as const } } };
  await host.must('item.add', { id: 'oil', car: 'pip', name: 'Oil and filter', interval: yearly, history: 'never-done' });
  await host.must('item.add', { id: 'belt', car: 'pip', name: 'Belt', interval: yearly, history: 'never-done' });
  await host.must('item.add', { id: 'fluid', car: 'pip', name: 'Fluid', interval: yearly, history: 'unknown' });
  await host.must('record.add', { id: 'r1', car: 'pip', date: day('2024-03-01'), title: 'EARLYWORK', reading: { value: 31_111, unit: 'km' }, lines: [{ name: 'Fluid', item: 'fluid', work: 'replace' }] });
  await host.must('record.add', { id: 'r2', car: 'pip', date: day('2026-03-01'), title: 'Late work', reading: { value: 52_222, unit: 'km' }, lines: [{ name: 'Oil', item: 'oil', work: 'replace' }] });
  await host.must('reading.record', { car: 'pip', value: 60_000, unit: 'km', date: day('2026-11-25') });
  await host.must('measurement.add', { car: 'pip', what: 'pad', place: 'front-left', value: 9, unit: 'mm', date: day('2024-03-02') });
  await host.must('measurement.add', { car: 'pip', what: 'pad', place: 'front-left', value: 6, unit: 'mm', date: day('2026-03-02') });
  await host.must('wear-limit.set', { car: 'pip', what: 'pad', limit: { value: 3, unit: 'mm' } });
  await host.must('obligation.add', { car: 'pip', kind: 'printed-expiry', name: 'Sealant bottle', lastValidDay: day('2026-10-31'), months: null });
  await host.must('wheel.add', { id: 'w1', car: 'pip', name: 'A', dateCode: '2612', place: 'front-left' });
  await host.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: day('2026-05-14'), months: 12, keepsDate: true });
  await host.must('record.add', { id: 'r3', car: 'pip', date: day('2026-05-01'), title: 'Yearly test', place: 'garage', placeName: 'SECRETPLACE', reference: 'SECRETNUMBER', lines: [{ name: 'test', work: 'check', outcome: 'good' }] });
  await host.must('obligation.renew', { obligation: 'test', on: day('2026-05-01'), reference: 'SECRETNUMBER' });
  await host.must('recall.set', { car: 'pip', number: 'R-EARLY', what: 'Horn', doneOn: day('2024-05-04'), how: 'EARLYHORN', doneBy: 'SECRETGARAGE' });
  await host.must('recall.set', { car: 'pip', number: 'R-OPEN', what: 'Pipe' });
  return host;
}

interface Told {
  readonly status: HistoryStatus;
  readonly pdf: string;
  readonly of: (element: StatusElement) => { readonly state: string; readonly said: readonly string[] };
}

async function write(host: TestHost, more: Partial<RequestOf<'pack.write'>> = {}): Promise<Told> {
  const { folder, pdf } = await packTexts((await host.must('pack.write', { car: 'pip', out: temporaryFolder(), ...more })).path);
  const status = must(historyPartSchema.parse(JSON.parse(readFileSync(join(folder, 'data/history.json'), 'utf8'))).status ?? null, 'status');
  const plain = (text: string) => text.replaceAll('\u202f', ' ');
  return {
    status,
    pdf: pdf.slice(pdf.indexOf('Status on 25 Nov 2026 What'), pdf.indexOf('A change is told apart')),
    of: (element) => {
      const one = must(status.elements.find((candidate) => candidate.element === element) ?? null, element);
      return { state: one.state, said: one.lines.map(({ name, text }) => plain(`${name}: ${text}`)) };
    },
  };
}

describe('the status of a car in its pack', () => {
  let host: TestHost;
  beforeEach(async () => {
    host = await household();
  });

  test('tells each element from what stands in the journal, in history.json', async () => {
    const { of, status } = await write(host);
    expect(of('whole-distance')).toEqual({ state: 'told', said: ['Last read: 60 000 km, read on 25 Nov 2026'] });
    expect(of('limited-parts').said.map((one) => one.replace(/limit 3 mm\. .*/, 'limit 3 mm.'))).toEqual([
      'Sealant bottle: expired on 31 Oct 2026', 'pad, front left: measured: 6 mm, 2 Mar 2026; limit 3 mm.',
      // By hand: the first Sunday of 2012 is 1 Jan, so week 26 begins on 24 Jun; from then, or from its Saturday, to 25 Nov 2026 that is 173 or 172 months.
      'tyre of wheel A: made in the week from 24 Jun 2012, 172 to 173 months ago; no limit of age is written down',
    ]);
    // By hand: 60 000 - 52 222 = 7778; 60 000 - 31 111 = 28 889.
    expect(of('since-last-done')).toEqual({ state: 'told', said: [
      'Belt: never done, as its keeper says: 72 months and 60 000 km since first registration',
      'Fluid: 32 months and 24 days and 28 889 km since it was done on 1 Mar 2024',
      'Oil and filter: 8 months and 24 days and 7778 km since it was done on 1 Mar 2026',
    ] });
    expect(of('inspection')).toEqual({ state: 'told', said: ['roadworthiness test: 6 months and 24 days since the last one on 1 May 2026, passed, by SECRETPLACE, reference SECRETNUMBER; holds until 14 May 2027'] });
    expect(of('recalls')).toEqual({ state: 'told', said: ['R-OPEN: Pipe: open: not done', 'R-EARLY: Horn: settled on 4 May 2024: EARLYHORN, by SECRETGARAGE; nothing comes again'] });
    expect(of('changes')).toEqual({ state: 'none-written', said: [] });
    expect(status.held).toBe(5);
  });

  test('stands in the PDF, with the elements of which nothing is written down', async () => {
    const { pdf } = await write(host);
    expect(pdf).toContain('by analogy: 5 of 6 are told whole.');
    expect(pdf).toContain('Changes to the car none written down');
    expect(pdf).toContain('Oil and filter 8 months and 24 days and 7778 km since it was done on 1 Mar 2026');
  });

  test('says what is withheld, and shows nothing of it', async () => {
    const { of, status, pdf } = await write(host, { withhold: ['placeName', 'reference', 'doneBy'] });
    expect(of('inspection').said).toEqual(['roadworthiness test: 6 months and 24 days since the last one on 1 May 2026, passed, by whom is withheld, its reference is withheld; holds until 14 May 2027']);
    expect(`${JSON.stringify(status)}${pdf}`).not.toMatch(/SECRET/);
  });

  test('of later days only says what is not shown, and shows nothing of it', async () => {
    const { of, status, pdf } = await write(host, { period: { from: day('2025-01-01'), to: null } });
    expect(of('since-last-done').said).toContain('Fluid: not known: not done on the days shown, and what came before 1 Jan 2025 is not shown');
    expect(of('since-last-done').said).toContain('Belt: not known: not done on the days shown, and what came before 1 Jan 2025 is not shown');
    expect(of('recalls')).toEqual({ state: 'in-part', said: ['R-OPEN: Pipe: open: not done'] });
    expect(of('changes').state).toBe('not-known');
    expect(pdf).toContain('Figures of the day are reckoned with what is not shown as well: 1 work record, 1 reading, 1 measurement.');
    expect(`${JSON.stringify(status)}${pdf}`).not.toMatch(/EARLY|31.111|2024/);
  });

  test('of earlier days only tells of no item how long ago it was, for it may have been done since', async () => {
    const { of } = await write(host, { period: { from: null, to: day('2024-12-31') } });
    expect(of('since-last-done')).toEqual({ state: 'not-known', said: [
      'Belt: not known: not done on the days shown, and what came after 31 Dec 2024 is not shown',
      'Fluid: not known: done on 1 Mar 2024, and what came after 31 Dec 2024 is not shown',
      'Oil and filter: not known: not done on the days shown, and what came after 31 Dec 2024 is not shown',
    ] });
    expect(of('inspection').said).toEqual(['roadworthiness test: holds until 14 May 2027; when it was last done is not known: what came after 31 Dec 2024 is not shown']);
    expect(of('whole-distance')).toMatchObject({ state: 'in-part', said: ['Last read: 31 111 km, read on 1 Mar 2024', expect.stringContaining('On 25 Nov 2026: about')] });
  });

  test('of a car of which nothing is written down has all six elements', async () => {
    await host.must('car.add', { id: 'moth', name: 'Moth' });
    const { status, of } = await write(host, { car: 'moth' });
    expect(status.held).toBe(0);
    expect(of('inspection')).toEqual({ state: 'not-known', said: ['roadworthiness test: until when it holds is not written down; when it was last done is not known: none is written down'] });
    expect(status.elements).toHaveLength(6);
  });
});
