import { describe, expect, test } from 'vitest';
import { recordAccount, toldCost } from '../../../shared-core/ledger/record-account.ts';
import { sumOf } from '../../../shared-core/ledger/posting.ts';
import { toolAccount } from '../../../shared-core/ledger/tool-account.ts';
import type { Tool } from '../../../shared-core/parts/tool.ts';
import type { CostLine } from '../../../shared-core/records/work-record.ts';
import { day } from '../calendar/day.ts';
import { recordOn } from '../records/record-examples.ts';

const cost = (kind: CostLine['kind'], amountMinor: number): CostLine => ({ kind, text: 'x', amountMinor });
const car = () => ({ kind: 'car', car: 'pip' }) as const;

describe("a record's money", () => {
  // The last three are published differences of tax by line and by total (reference M6: 0.99 + 1.49 + 2.49 and 3 x 1.02 at a fifth; 3 x 0.33, computed): the printed total stands.
  test.each([
    { case: 'its lines', costs: [cost('parts', 3499), cost('discount', -350)], printed: null, known: false, kinds: [['parts', 3499], ['discount', -350]] },
    { case: 'a total alone', costs: [], printed: 9900, known: false, kinds: [['other', 9900]] },
    { case: 'what came off the shelf was paid for before', costs: [cost('shelf', 2698), cost('consumables', 145)], printed: null, known: true, kinds: [['consumables', 145]] },
    { case: 'unless nobody knows what the lot cost', costs: [cost('shelf', 2698), cost('consumables', 145)], printed: null, known: false, kinds: [['consumables', 145], ['parts', 2698]] },
    { case: 'and it is no part of what a receipt prints', costs: [cost('shelf', 2698), cost('labour', 5000)], printed: 5000, known: true, kinds: [['labour', 5000]] },
    { case: 'three lines with 1.00 of tax, 0.99 on the total', costs: [cost('parts', 99 + 20), cost('parts', 149 + 30), cost('parts', 249 + 50)], printed: 497 + 99, known: false, kinds: [['parts', 119], ['parts', 179], ['parts', 299], ['rounding', -1]] },
    { case: 'three lines with 0.60 of tax, 0.61 on the total', costs: [cost('parts', 122), cost('parts', 122), cost('parts', 122)], printed: 306 + 61, known: false, kinds: [['parts', 122], ['parts', 122], ['parts', 122], ['rounding', 1]] },
    { case: 'three lines with 0.21 of tax, 0.20 on the total', costs: [cost('parts', 40), cost('parts', 40), cost('parts', 40)], printed: 119, known: false, kinds: [['parts', 40], ['parts', 40], ['parts', 40], ['rounding', -1]] },
  ])('$case', ({ costs, printed, known, kinds }) => {
    const account = recordAccount(recordOn('2026-05-01', { costs, printedTotalMinor: printed }), known, car);
    expect(account.costs.map(({ kind, minor }) => [kind, minor])).toEqual(kinds);
    expect(sumOf(account.payments)).toBe(sumOf(account.costs));
    if (printed !== null) expect(sumOf(account.payments)).toBe(printed);
  });

  test('as told, it is what was printed and what came off the shelf', () => {
    expect([toldCost({ costs: [cost('shelf', 2698), cost('labour', 4999)], printedTotalMinor: 5000 }), toldCost({ costs: [cost('shelf', 2698), cost('labour', 4999)], printedTotalMinor: null }), toldCost({ costs: [], printedTotalMinor: null })]).toEqual([7698, 7697, 0]);
  });
});

describe("a tool's money", () => {
  const tool = (more: Partial<Tool> = {}): Tool => ({ id: 'ramps', name: 'ramps', state: 'owned', where: null, lender: null, until: null, note: '', paidMinor: 1000, boughtOn: day('2026-01-01'), spreadOver: 3, ...more });
  const used = ['2025-12-31', '2026-02-01', '2026-03-01'].map((on, at) => recordOn(on, { id: `r${at}`, car: at === 2 ? 'wren' : 'pip' }));

  // By hand: 10.00 over three uses are 3.33, 3.34 and 3.33.
  test.each([
    { case: 'uses from the day it was bought, each car its own', tool: tool(), uses: used, costs: [['pip', 333], ['wren', 334]], left: 333 },
    { case: 'no number of uses: all is still in it', tool: tool({ spreadOver: undefined }), uses: used, costs: [], left: 1000 },
    { case: 'when it has paid for itself it costs nothing more', tool: tool({ spreadOver: 1 }), uses: used, costs: [['pip', 1000]], left: 0 },
    { case: 'of unknown price', tool: tool({ paidMinor: undefined, boughtOn: undefined, spreadOver: undefined }), uses: used, costs: [], left: 0 },
  ])('$case', ({ tool: one, uses, costs, left }) => {
    const account = toolAccount(one, uses);
    expect([account.costs.map(({ side, minor }) => [side.kind === 'car' ? side.car : side.kind, minor]), sumOf(account.balances)]).toEqual([costs, left]);
    expect(sumOf(account.payments)).toBe(sumOf(account.costs) + left);
  });
});
