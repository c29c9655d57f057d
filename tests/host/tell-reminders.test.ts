import { describe, expect, test } from 'vitest';
import { composeHost, type ComposedHost } from '../../electron/host/compose-host.ts';
import { tellReminders, type Told } from '../../electron/host/tell-reminders.ts';
import type { World } from '../../electron/host/host-context.ts';
import { realWorld } from '../../electron/host/real-world.ts';
import { day } from '../shared-core/calendar/day.ts';
import { temporaryFolder } from './open-test-host.ts';

const MOST = 3;

function opened(folder: string, on: string): ComposedHost {
  const world: World = realWorld(day(on));
  const host = composeHost(folder, world);
  if (!host.ok) throw new Error(host.refusal.code);
  return host.value;
}

/** Opens the household on a day, asks for what is to be told, and closes it again. */
async function toldOn(folder: string, on: string): Promise<Told | null> {
  const host = opened(folder, on);
  const told = tellReminders(host.context);
  await host.close();
  return told;
}

/** A car with five items due in turn: the first is to be arranged from 15 February 2027, each other a day later. */
async function household(): Promise<string> {
  const folder = temporaryFolder();
  const host = opened(folder, '2026-11-25');
  const must = async (name: Parameters<ComposedHost['call']>[0], request: unknown) => {
    const reply = await host.call(name, request as never);
    if (!reply.ok) throw new Error(`refused ${name}: ${JSON.stringify(reply.refusal)}`);
  };
  await must('household.start', { name: 'Ours' });
  await must('car.add', { id: 'pip', name: 'Pip', power: 'petrol', year: 2020, firstRegistered: '2020-03-01' });
  for (const n of [1, 2, 3, 4, 5]) {
    await must('item.add', { id: `i${n}`, car: 'pip', name: `Item ${n}`, interval: { repeat: { months: 12, distance: null } } });
    await must('record.add', { car: 'pip', date: `2026-03-0${n}`, lines: [{ item: `i${n}` }] });
  }
  await host.close();
  return folder;
}

describe('a reminder on the desktop', () => {
  test('comes once a day at most, and of nothing twice, over every restart', async () => {
    const folder = await household();
    expect(await toldOn(folder, '2027-02-14')).toBeNull();
    expect(await toldOn(folder, '2027-02-15')).toEqual({ title: 'The cars of Ours', body: 'Pip: Item 1, time to arrange it' });
    expect(await toldOn(folder, '2027-02-15')).toBeNull();
    expect(await toldOn(folder, '2027-02-16')).toEqual({ title: 'The cars of Ours', body: 'Pip: Item 2, time to arrange it' });
    expect(await toldOn(folder, '2027-02-17')).toEqual({ title: 'The cars of Ours', body: 'Pip: Item 3, time to arrange it' });
    expect(await toldOn(folder, '2027-02-19')).toEqual({ title: 'The cars of Ours', body: 'Pip: Item 4, time to arrange it\nPip: Item 5, time to arrange it' });
    expect(await toldOn(folder, '2027-02-20')).toBeNull();
  });

  test('gathers all that is new, the gravest by name and the rest by number', async () => {
    const told = await toldOn(await household(), '2027-03-02');
    expect(told?.title).toBe('Late: the cars of Ours');
    expect(told?.body.split('\n')).toEqual(['Pip: Item 1, 1 day late', 'Pip: Item 2, time to arrange it', 'Pip: Item 3, time to arrange it', `and ${5 - MOST} more in the yard`]);
  });

  test('what was only counted is named on the next day', async () => {
    const folder = await household();
    await toldOn(folder, '2027-03-02');
    expect((await toldOn(folder, '2027-03-03'))?.body.split('\n')).toEqual(['Pip: Item 4, time to arrange it', 'Pip: Item 5, time to arrange it']);
    expect(await toldOn(folder, '2027-03-04')).toBeNull();
  });

  test('under a mended interval it is told again when its time comes', async () => {
    const folder = await household();
    expect((await toldOn(folder, '2027-02-15'))?.body).toBe('Pip: Item 1, time to arrange it');
    const host = opened(folder, '2027-02-15');
    const changed = await host.call('item.change', { id: 'i1', interval: { first: { months: 36, distance: null }, repeat: { months: 36, distance: null } } } as never);
    expect(changed).toMatchObject({ ok: true });
    await host.close();
    for (const date of ['2027-02-16', '2027-02-17', '2027-02-19']) await toldOn(folder, date);
    expect(await toldOn(folder, '2029-02-01')).toBeNull();
    expect((await toldOn(folder, '2029-02-15'))?.body).toBe('Pip: Item 1, time to arrange it');
  });

  test('with two hosts open on one folder only one of them tells', async () => {
    const folder = await household();
    const [one, other] = [opened(folder, '2027-02-15'), opened(folder, '2027-02-15')];
    expect([tellReminders(one.context), tellReminders(other.context)].map((told) => told === null)).toEqual([false, true]);
    await one.close();
    await other.close();
  });

  test('is no entry of the journal: two packs of a day stay the same bytes', async () => {
    const folder = await household();
    const host = opened(folder, '2027-02-15');
    const rows = () => host.context.household().store.prepare<[], number>('SELECT count(*) FROM journal').pluck().get();
    const before = rows();
    expect(tellReminders(host.context)).not.toBeNull();
    expect(rows()).toBe(before);
    const examined = await host.call('household.examine', {});
    expect(examined).toMatchObject({ ok: true, value: { faults: [] } });
    await host.close();
  });

  test('a folder without a household has nothing to tell', async () => {
    expect(await toldOn(temporaryFolder(), '2027-02-15')).toBeNull();
  });
});
