import { describe, expect, test } from 'vitest';
import { orderViewSchema } from '../../shared-core/views/order-view-schema.ts';
import { jsonOf, runCommand } from './run-command.ts';

const SAMPLE = ['order', '--sample', '--on', '2026-11-25'] as const;

describe('order of the household', () => {
  test('one JSON value, as the contract has it, under the terms asked for', async () => {
    const ran = await runCommand(...SAMPLE, '--supplier', 'copper-lane', '--by', '2026-12-20', '--no-leftovers', '--json');
    expect(ran).toMatchObject({ status: 0, said: '' });
    const order = orderViewSchema.parse(jsonOf(ran));
    expect(order).toMatchObject({ status: 'optimal', terms: { onlySupplier: 'copper-lane', arriveBy: '2026-12-20', noLeftovers: true }, perSupplier: [] });
    expect(order.orders.every((one) => one.supplier === 'copper-lane')).toBe(true);
    expect(order.needs.every((one) => one.neededBy <= '2026-12-20')).toBe(true);
  }, 120_000);

  test('the same in sentences: what it comes to, for whom each line is, what falls on whom', async () => {
    const { status, out } = await runCommand(...SAMPLE);
    expect(status).toBe(0);
    expect(out).toContain('Nothing cheaper meets the same needs: it is proven.');
    expect(out).toMatch(/\n {2}1 x Service kit for Pip \(CL-SK1\), 29\.90 GBP: Alder, Pip\n/);
    expect(out).toMatch(/\n {2}The shelf bears \d+\.\d\d GBP\n/);
    expect(out).toContain('The tool oil filter wrench is missing. It is taken for Pip: engine oil and filter. Buy or borrow it.');
    expect(out).not.toMatch(/undefined|null|NaN|\{/);
  }, 120_000);

  test.each([
    { kind: 'csv', first: /^"supplier","number","part"/ },
    { kind: 'mail', first: /^To Copper Lane Parts: please send the following\./ },
    { kind: 'counter', first: /^Copper Lane Parts, 25 Nov 2026\n\[ \] 1 x / },
  ])('as a sheet: $kind', async ({ kind, first }) => {
    expect((await runCommand(...SAMPLE, '--sheet', kind)).out).toMatch(first);
  }, 120_000);

  test.each([
    { words: ['order', '--sheet', 'pdf'], status: 2 },
    { words: ['order', '--by', 'soon'], status: 2 },
    { words: ['order', '--sample', '--supplier', 'nobody'], status: 1 },
  ])('$words ends with $status', async ({ words, status }) => {
    expect((await runCommand(...words)).status).toBe(status);
  }, 120_000);
});
