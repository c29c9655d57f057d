import { beforeEach, describe, expect, test } from 'vitest';
import { day, openTestHost, temporaryFolder, type TestHost } from '../host/open-test-host.ts';
import { packTexts, type PackTexts } from './pack-texts.ts';

/** A car of which each kind of thing happened in 2024 and, but for the renewal, in 2026; what is of 2024 is in capitals. */
async function household(): Promise<TestHost> {
  const host = openTestHost();
  await host.must('household.start', { name: 'Test household' });
  await host.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25') });
  await host.must('item.add', { id: 'oil', car: 'pip', name: 'Oil and filter', interval: { repeat: { months: 12, distance: { value: 15_000, unit: 'km' } } }, history: 'never-done' });
  await host.must('record.add', { id: 'r1', car: 'pip', date: day('2024-03-01'), title: 'EARLYWORK', reading: { value: 31_111, unit: 'km' }, lines: [{ name: 'Oil', item: 'oil' }] });
  await host.must('record.add', { id: 'r2', car: 'pip', date: day('2026-03-01'), title: 'Late work', reading: { value: 52_222, unit: 'km' }, lines: [{ name: 'Oil', item: 'oil' }] });
  for (const [date, value] of [['2024-03-02', 9], ['2024-09-02', 8], ['2026-03-02', 6]] as const) await host.must('measurement.add', { car: 'pip', what: 'pad', place: 'front-left', value, unit: 'mm', date: day(date) });
  await host.must('wear-limit.set', { car: 'pip', what: 'pad', limit: { value: 3, unit: 'mm' } });
  const letter = Buffer.from('%PDF-1.4\nEARLYLETTER\n%%EOF\n').toString('base64');
  const { paper } = await host.must('paper.keep', { name: 'EARLYLETTER.pdf', base64: letter });
  await host.must('recall.set', { id: 'early', car: 'pip', number: 'R-EARLY', what: 'Horn', doneOn: day('2024-05-04'), how: 'EARLYHORN', papers: [paper.id] });
  await host.must('recall.set', { car: 'pip', number: 'R-LATE', what: 'Wiper', doneOn: day('2026-05-04'), how: 'Wiper renewed' });
  await host.must('recall.set', { car: 'pip', number: 'R-AGAIN', what: 'Belt', doneOn: day('2024-05-04'), how: 'Looked at', nextOn: day('2027-05-04') });
  await host.must('recall.set', { car: 'pip', number: 'R-OPEN', what: 'Pipe' });
  return host;
}

const write = async (host: TestHost, period: { readonly from: string | null; readonly to: string | null }): Promise<PackTexts> => {
  const at = (text: string | null) => (text === null ? null : day(text));
  return packTexts((await host.must('pack.write', { car: 'pip', out: temporaryFolder(), period: { from: at(period.from), to: at(period.to) } })).path);
};

describe('a pack of a period', () => {
  let host: TestHost;
  beforeEach(async () => {
    host = await household();
  });

  test('holds no recall that was done on another day, nor its letter, in rows, PDF and tables; one that is still to be seen to is always there', async () => {
    const { all, file } = await write(host, { from: '2025-01-01', to: null });
    for (const left of ['R-EARLY', 'EARLYHORN', 'EARLYLETTER']) expect(all).not.toContain(left);
    for (const held of ['R-LATE', 'R-AGAIN', 'R-OPEN']) {
      expect(file('data/tables/recalls.csv')).toContain(held);
      expect(file('data/journal/rows.json')).toContain(held);
    }
    expect((await host.must('pack.papers', { car: 'pip', period: { from: day('2025-01-01'), to: null } })).papers).toEqual([]);
  });

  test('a recall whose “done” was taken back is open, and is there with all its entries', async () => {
    await host.must('recall.set', { id: 'early', car: 'pip', number: 'R-EARLY', what: 'Horn', doneOn: null, how: null });
    const { entries } = JSON.parse((await write(host, { from: '2025-01-01', to: null })).file('data/journal/rows.json')) as { entries: { row: { kind: string }; shown: { number?: { value: string } } }[] };
    // With both its entries: when it was said to be done, and that it is not.
    expect(entries.filter(({ row, shown }) => row.kind === 'recall-set' && shown.number?.value === 'R-EARLY')).toHaveLength(2);
  });

  test('counts what is left out, and says what is not and which figures hang on it', async () => {
    const { pdf } = await write(host, { from: '2025-01-01', to: null });
    expect(pdf).toContain('What happened on other days than those shown: 1 work record, 1 reading, 2 measurements, 1 recall that is done, 1 paper.');
    expect(pdf).toContain('recalls that are still to be seen to.');
    expect(pdf).toContain('Figures of today are reckoned with what is not shown as well (1 work record, 1 reading, 2 measurements)');
    expect(pdf).toContain('; reckoned with 1 reading not shown');
    expect(pdf).toContain('When each is due next is reckoned with what is not shown as well: 1 work record, 1 reading, 2 measurements.');
    expect(pdf).not.toContain('from the first record to today');
  });

  test('a figure of wear that comes from measurements not shown says so', async () => {
    const { pdf } = await write(host, { from: '2025-01-01', to: null });
    expect(pdf).toMatch(/once, on 2 Mar 2026 .* Reckoned with 2 measurements not shown: /);
  });

  test('in which nothing happened says that of the days shown', async () => {
    const { pdf } = await write(host, { from: '2021-01-01', to: '2021-12-31' });
    expect(pdf).toContain('No work is recorded on the days shown.');
    expect(pdf).not.toContain('Measured wear');
  });

  test('of the whole history says none of this', async () => {
    const { pdf, all } = await write(host, { from: null, to: null });
    expect(pdf).not.toMatch(/reckoned with/i);
    expect(pdf).not.toContain('What happened on other days');
    for (const held of ['R-EARLY', 'EARLYHORN', 'EARLYWORK']) expect(all).toContain(held);
  });
});
