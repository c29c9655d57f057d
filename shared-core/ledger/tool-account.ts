import type { Tool } from '../parts/tool.ts';
import type { WorkRecord } from '../records/work-record.ts';
import { NO_MONEY, sumOf, type Account, type Cost } from './posting.ts';
import { spread } from './spread.ts';

/**
 * What was paid for a tool, spread over its uses: each record of work at home with a task that takes it is one, until it has paid for
 * itself. What is left is still in the tool; without a number of uses all of it is.
 */
export function toolAccount(tool: Tool, uses: readonly WorkRecord[]): Account {
  const { paidMinor, boughtOn, spreadOver } = tool;
  if (paidMinor === undefined || boughtOn === undefined || paidMinor === 0) return NO_MONEY;
  const source = { kind: 'tool', id: tool.id } as const;
  const after = spreadOver === undefined ? [] : [...uses].filter((record) => record.date >= boughtOn).sort((a, b) => (a.date === b.date ? (a.id < b.id ? -1 : 1) : a.date < b.date ? -1 : 1)).slice(0, spreadOver);
  const shares = spread(paidMinor, spreadOver ?? 1, after.map((_, at) => at + 1));
  const costs = after.map((record, at): Cost => ({ on: record.date, minor: shares[at] ?? 0, kind: 'tools', side: { kind: 'car', car: record.car }, source: { kind: 'record', id: record.id }, of: tool.id })).filter(({ minor }) => minor !== 0);
  const left = paidMinor - sumOf(costs);
  return { payments: [{ on: boughtOn, minor: paidMinor, source }], costs, balances: left === 0 ? [] : [{ kind: 'tools', minor: left, source, of: tool.id }] };
}
