import { expect, test } from 'vitest';
import { checkPackAt } from '../../electron/pack/check-pack.ts';
import { packCheckView, type PackCheckView } from '../../shared-core/views/pack-check-view.ts';
import { must } from '../../shared-core/result/assert.ts';
import { runCommand } from '../cli/run-command.ts';
import { day } from '../host/open-test-host.ts';
import { handedOver, keeper, nextKeeper } from './keepers.ts';

async function checked(path: string, seal: string | null = null): Promise<PackCheckView> {
  const report = await checkPackAt(path, seal);
  return packCheckView(must(report.ok ? report.value : null, 'report'));
}

const FIRST = /^data\/previous\/1-[^!]*\.zip$/;
const WITHIN = /^data\/previous\/1-[^!]*\.zip!\/data\/previous\/1-[^!]*\.zip$/;

/** The first keeper withholds a field and shows some days; the second withholds another field and shows all; the third withholds nothing. */
async function chain() {
  const first = await keeper('2024-06-01');
  await first.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25') });
  await first.must('record.add', { car: 'pip', date: day('2024-03-01'), title: 'Bulb', doneBy: 'Somebody', lines: [{ name: 'Bulb' }] });
  const { text } = await first.must('seal.give', {});
  const one = await handedOver(first, { withhold: ['doneBy'], period: { from: day('2024-01-01'), to: day('2024-12-31') } });
  const second = await nextKeeper(one, '2025-06-01');
  await second.host.must('record.add', { car: second.car, date: day('2025-03-01'), title: 'Bulb', method: 'Handbook', lines: [{ name: 'Bulb' }] });
  const two = await handedOver(second.host, { withhold: ['method'], previous: 'whole' });
  const third = await nextKeeper(two, '2026-06-01');
  return { one, two, three: await handedOver(third.host), seal: text };
}

const ofField = (view: PackCheckView, field: string) => [...new Set(view.withheld.filter((one) => one.field === field).map((one) => one.path ?? 'here'))];
const ofDays = (view: PackCheckView) => view.notes.filter((note) => note.includes('1 Jan 2024'));

test('what an earlier keeper withheld, and which days that one shows, is told by check of each later pack, with the way to it', async () => {
  const { one, two, three, seal } = await chain();
  const first = await checked(one);
  expect(ofDays(first)).toEqual(['This pack shows 1 Jan 2024 to 31 Dec 2024 only: what is dated outside is left out.']);
  expect(ofField(first, 'doneBy')).toEqual(['here']);

  const second = await checked(two);
  expect(second.sound).toBe(true);
  expect(ofDays(second)).toEqual([expect.stringMatching(/^data\/previous\/1-[^!]*\.zip, the pack of an earlier keeper, shows 1 Jan 2024 to 31 Dec 2024 only: what is dated outside is left out\.$/)]);
  expect(ofField(second, 'doneBy')).toEqual([expect.stringMatching(FIRST)]);
  expect(ofField(second, 'method')).toContain('here');

  const third = await checked(three);
  expect(ofDays(third)).toEqual([expect.stringMatching(/^data\/previous\/[^!]*!\/data\/previous\/[^!]*\.zip, the pack/)]);
  expect(ofField(third, 'doneBy')).toEqual([expect.stringMatching(WITHIN)]);
  expect(ofField(third, 'method')).toEqual([expect.stringMatching(FIRST)]);

  // Once only where a seal of the first keeper is given, which is compared with the pack within.
  const given = await checked(three, seal);
  expect(given.notes.filter((note) => note.startsWith('The seal you gave agrees'))).toHaveLength(1);
  expect(ofDays(given)).toHaveLength(1);
  expect(new Set(given.notes).size).toBe(given.notes.length);

  const { out } = await runCommand('check', two);
  expect(out).toMatch(/ {2}withheld: [a-zA-Z, ]*method/);
  expect(out).toMatch(/ {2}withheld in data\/previous\/1-[^!]*\.zip: doneBy/);
});
