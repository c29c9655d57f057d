import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { composeHost } from '../../electron/host/compose-host.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { day, openTestHost, temporaryFolder } from '../host/open-test-host.ts';
import { packTexts } from './pack-texts.ts';

async function started() {
  const host = openTestHost();
  await host.must('household.start', { name: 'Test household' });
  await host.must('car.add', { id: 'pip', name: 'Pip' });
  return { host, write: async (period: { from: string | null; to: string | null } = { from: null, to: null }) => packTexts((await host.must('pack.write', { car: 'pip', out: temporaryFolder(), period: { from: period.from === null ? null : day(period.from), to: period.to === null ? null : day(period.to) } })).path) };
}

test('amounts below nothing stay numbers in costs.csv, and the total of a receipt stands beside each of its lines', async () => {
  const { host, write } = await started();
  await host.must('record.add', { id: 'a', car: 'pip', date: day('2026-11-20'), title: 'Tyres', lines: [{ name: 'Tyres' }], printedTotalMinor: 20_000, costs: [{ kind: 'parts', text: '-4 tyres', amountMinor: 23_400 }, { kind: 'discount', text: '＝sale', amountMinor: -3400 }] });
  await host.must('record.add', { id: 'b', car: 'pip', date: day('2026-11-21'), title: 'Wash', lines: [{ name: 'Wash' }], printedTotalMinor: 1500 });
  await host.must('record.add', { id: 'c', car: 'pip', date: day('2026-11-22'), title: 'Bulb', lines: [{ name: 'Bulb' }], costs: [{ kind: 'parts', text: 'Bulb', amountMinor: 250 }] });
  // Source: by hand: 234.00 - 34.00 = 200.00.
  expect((await write()).file('data/tables/costs.csv').split('\r\n')).toEqual([
    '"date","title","kind","what","amount","currency","printed_total"',
    '"2026-11-22","Bulb","parts","Bulb","2.50","GBP",""',
    '"2026-11-21","Wash","","","","GBP","15.00"',
    `"2026-11-20","Tyres","parts","'-4 tyres","234.00","GBP","200.00"`,
    `"2026-11-20","Tyres","discount","'＝sale","-34.00","GBP","200.00"`,
    '',
  ]);
});

describe('readings of a car whose instrument was replaced', () => {
  test('stand with the instrument they were read from and the whole distance, in the PDF and in readings.csv', async () => {
    const { host, write } = await started();
    await host.must('reading.record', { car: 'pip', value: 100_000, unit: 'km', date: day('2025-01-10') });
    await host.must('reading.record', { car: 'pip', value: 50, unit: 'km', date: day('2025-06-10'), replaced: { lastShown: { value: 104_000, unit: 'km' } } });
    await host.must('reading.record', { car: 'pip', value: 5050, unit: 'km', date: day('2026-01-10') });
    const { pdf, file } = await write();
    // Source: by hand: the old one ended at 104 000, the new one began at 50: 104 000 + (5050 - 50) = 109 000.
    expect(file('data/tables/readings.csv').split('\r\n')).toEqual([
      '"date","shown","unit","instrument","whole_distance","whole_unit","source","standing"',
      '"2025-01-10","100000","km","first","100000","km","read by the keeper","accepted"',
      '"2025-06-10","50","km","2025-06-10","104000","km","read by the keeper","accepted"',
      '"2026-01-10","5050","km","2025-06-10","109000","km","read by the keeper","accepted"',
      '',
    ]);
    expect(pdf).toContain('10 Jan 2026 5050 km of 10 Jun 2025 109 000 km');
    expect(pdf).toContain('10 Jan 2025 100 000 km the first 100 000 km');
  });
});

describe('a record whose day was amended', () => {
  test('tells the day of its reading beside it, and not the value where that day is not shown', async () => {
    const { host, write } = await started();
    await host.must('record.add', { id: 'a', car: 'pip', date: day('2026-03-01'), title: 'Oil', reading: { value: 40_000, unit: 'km' }, lines: [{ name: 'Oil' }] });
    await host.must('record.amend', { id: 'a', date: day('2026-05-05'), why: 'a slip of the pen' });
    const whole = await write();
    expect(whole.pdf).toContain('40 000 km, read on 1 Mar 2026');
    const part = await write({ from: '2026-05-01', to: null });
    expect(part.pdf).toContain('read on a day that is not shown');
    expect(part.file('data/tables/records.csv')).not.toContain('40');
  });
});

test('when a record was written down is told in UTC with the time, so that east of Greenwich it contradicts nothing', async () => {
  // Half past midnight on 26 Nov in a zone two hours ahead.
  const composed = composeHost(join(temporaryFolder(), 'household'), { ...realWorld(day('2026-11-26')), now: () => '2026-11-25T22:30:00.000Z' });
  if (!composed.ok) throw new Error(composed.refusal.code);
  const host = composed.value;
  await host.call('household.start', { name: 'Test household' });
  await host.call('car.add', { id: 'pip', name: 'Pip' });
  await host.call('record.add', { id: 'a', car: 'pip', date: day('2026-11-26'), lines: [{ name: 'Bulb' }] });
  await host.call('record.amend', { id: 'a', title: 'A bulb', why: 'its name' });
  const out = temporaryFolder();
  expect(await host.call('pack.write', { car: 'pip', out })).toMatchObject({ ok: true });
  const { pdf, file } = await packTexts(join(out, 'pip-history-2026-11-26.zip'));
  expect(pdf).toContain('on the same day (25 Nov 2026, 22:30 UTC)');
  expect(pdf).toContain('Amended on 25 Nov 2026, 22:30 UTC: its name');
  expect(pdf).toContain('near midnight the calendar of the place may have had the day before or after');
  expect(file('data/tables/records.csv')).toContain('"2026-11-26","2026-11-25T22:30:00.000Z","same-day"');
  await host.close();
});

test('what is open is told with how bad it is and when it is looked at next, what is unsafe first', async () => {
  const { host, write } = await started();
  await host.must('observation.note', { car: 'pip', text: 'Tap', date: day('2026-10-01'), severity: 'watch', recheckOn: day('2027-03-01') });
  await host.must('observation.note', { car: 'pip', text: 'Chain', date: day('2026-10-02'), severity: 'soon' });
  await host.must('observation.note', { car: 'pip', text: 'Hose', date: day('2026-10-03'), severity: 'unsafe' });
  const { pdf } = await write();
  const lines = ['Seen on 3 Oct 2026 and still open (unsafe: not to be driven like this): Hose', 'Seen on 1 Oct 2026 and still open: Tap; to be looked at again by 1 Mar 2027', 'Seen on 2 Oct 2026 and still open (to be seen to soon): Chain'];
  for (const line of lines) expect(pdf).toContain(line);
  expect(pdf.indexOf('Hose')).toBeLessThan(Math.min(pdf.indexOf('Tap'), pdf.indexOf('Chain')));
});
