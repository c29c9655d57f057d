import { describe, expect, test } from 'vitest';
import type { Push } from '../../shared-core/contract/push.ts';
import { openTestHost, type TestHost } from './open-test-host.ts';

async function sampleHost(): Promise<{ readonly host: TestHost; readonly pushes: Push[] }> {
  const host = openTestHost();
  await host.must('sample.open', {});
  const pushes: Push[] = [];
  host.composed.onPush((push) => pushes.push(push));
  return { host, pushes };
}

describe('an order by the host', () => {
  test('is proposed, placed, received short, solved anew, received and undone', async () => {
    const { host, pushes } = await sampleHost();
    const first = await host.must('order.propose', { job: 'order-1' });
    expect(pushes.at(-1)).toEqual({ kind: 'job-ended', job: 'order-1', ok: true });
    expect(first).toMatchObject({ status: 'optimal', unmet: [] });
    for (const order of first.orders) await host.must('order.place', { ...order.place, id: `of-${order.supplier}` });
    expect(pushes.at(-1)).toMatchObject({ kind: 'changed', stages: ['parts'] });
    expect(await host.must('order.propose', {})).toMatchObject({ totalMinor: 0, lines: [], unmet: [] });

    const [short] = first.orders;
    const lines = short?.lines.map((line, at) => ({ line: `line-${at + 1}`, packs: line.packs, found: at === 0 ? ('not-coming' as const) : ('good' as const) })) ?? [];
    await host.must('order.receive', { order: `of-${short?.supplier ?? ''}`, lines });
    const second = await host.must('order.propose', {});
    expect([second.lines.length > 0, second.unmet, second.totalMinor < first.totalMinor]).toEqual([true, [], true]);
    for (const order of second.orders) await host.must('order.place', { ...order.place, id: `rest-${order.supplier}`, sure: true });
    const rest = await host.must('order.receive', { order: `rest-${second.orders[0]?.supplier ?? ''}` });
    expect(await host.must('order.propose', {})).toMatchObject({ totalMinor: 0, unmet: [] });

    await host.must('entry.withdraw', { entries: [...rest.undo], why: 'a slip' });
    expect((await host.must('parts.show', {})).orders.find((one) => one.order.id === `rest-${second.orders[0]?.supplier ?? ''}`)?.state).toBe('on-the-way');
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  }, 180_000);

  test('a paper that is not kept is no paper of a delivery', async () => {
    const { host } = await sampleHost();
    expect(await host.call('order.receive', { order: 'bulb-order', papers: ['0'.repeat(64)] })).toMatchObject({ ok: false, refusal: { code: 'refers-to-nothing' } });
    const { paper } = await host.must('paper.keep', { name: 'note.txt', base64: Buffer.from('delivery note').toString('base64') });
    await host.must('order.receive', { order: 'bulb-order', papers: [paper.id] });
    expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
  }, 120_000);
});
