import { expect, test } from 'vitest';
import type { Push } from '../../shared-core/contract/push.ts';
import { readEntries } from '../../electron/store/journal-table.ts';
import { openHouseholdWithPip, openTestHost } from '../host/open-test-host.ts';
import { moduleOf, startProcess, type OtherProcess } from './other-process.ts';

const EACH = 40;

const WRITER = `
const { composeHost } = await import(${moduleOf('electron/host/compose-host.ts')});
const { realWorld } = await import(${moduleOf('electron/host/real-world.ts')});
const [folder, name, count] = process.argv.slice(1);
const host = composeHost(folder, realWorld()).value;
console.log('open');
await new Promise((resolve) => process.stdin.once('data', resolve));
for (let at = 0; at < Number(count); at += 1) {
  const reply = await host.call('observation.note', { id: name + '-' + at, car: 'pip', text: 'seen by ' + name });
  if (!reply.ok) throw new Error(JSON.stringify(reply.refusal));
  console.log(reply.value.undo.join());
}
await host.close();
process.exit();`;

async function linesOf(process: OtherProcess, count: number): Promise<readonly string[]> {
  const lines: string[] = [];
  while (lines.length < count) lines.push(await process.line());
  return lines;
}

test('two processes that write at once lose no entry, and the chain is whole', async () => {
  const host = await openHouseholdWithPip();
  const writers = ['a', 'b'].map((name) => ({ name, process: startProcess(WRITER, host.folder, name, String(EACH)) }));
  for (const { process } of writers) expect(await process.line()).toBe('open');
  for (const { process } of writers) process.say('go\n');
  const confirmed = await Promise.all(writers.map(({ process }) => linesOf(process, EACH)));
  const numbers = confirmed.flat().map(Number);
  expect(new Set(numbers).size).toBe(2 * EACH);
  const entries = [...readEntries(host.composed.context.household().store)];
  expect(entries.map((entry) => entry.seq)).toEqual(Array.from({ length: 4 + 2 * EACH }, (_, at) => at));
  for (const [at, { name }] of writers.entries()) {
    expect(confirmed[at]?.map((seq) => entries[Number(seq)]?.values['id'])).toEqual(Array.from({ length: EACH }, (_, n) => `${name}-${n}`));
  }
  expect(await host.must('household.examine', {})).toMatchObject({ entries: 4 + 2 * EACH, faults: [] });
});

test('an examination is of one moment, whatever another process writes meanwhile', async () => {
  const host = await openHouseholdWithPip();
  const writer = startProcess(WRITER, host.folder, 'w', '60');
  expect(await writer.line()).toBe('open');
  writer.say('go\n');
  const seen: number[] = [];
  for (let last = ''; last !== '63'; last = await writer.line()) {
    const { entries, faults } = await host.must('household.examine', {});
    expect(faults).toEqual([]);
    seen.push(entries);
  }
  expect(new Set(seen).size).toBeGreaterThan(3);
});

test('a window learns that another process has written, and not of what it wrote itself twice', async () => {
  const first = await openHouseholdWithPip();
  const second = openTestHost({ folder: first.folder });
  const told: Push[] = [];
  first.composed.onPush((push) => told.push(push));
  await second.must('car.change', { id: 'pip', name: 'Pipkin' });
  await expect.poll(() => told, { timeout: 5000 }).toMatchObject([{ kind: 'changed', stages: expect.arrayContaining(['fleet']) as string[], cars: [] }]);
  expect((await first.must('due.show', {})).cars[0]?.name).toBe('Pipkin');
  await first.must('car.change', { id: 'pip', name: 'Pippin' });
  await new Promise((resolve) => setTimeout(resolve, 1500));
  expect(told).toMatchObject([{ cars: [] }, { stages: ['fleet'], cars: ['pip'] }]);
});
