import { describe, expect, test } from 'vitest';
import { householdAccount } from '../../../shared-core/ledger/household-account.ts';
import { doneWork, wholeCost } from '../../../shared-core/ledger/work-costs.ts';
import type { QuotedThing } from '../../../shared-core/ledger/held-quote.ts';
import { workRecords } from '../../../shared-core/records/work-record.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

const TODAY = day('2026-11-25');
const things: readonly QuotedThing[] = [{ id: 'oil', item: 'oil-change', text: 'oil' }, { id: 'wash', item: null, text: 'Wash' }, { id: 'test', item: null, text: 'emissions test' }];

/** Five litres of oil at 50.00 and a cabin filter of unknown price on the shelf; a funnel of 6.00 over three uses of the oil change. */
function household() {
  const made = memoryHousehold();
  made.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-01-01') });
  for (const id of ['oil', 'cabin', 'air']) made.must('specification.set', { id, name: id, unit: id === 'oil' ? 'litre' : 'each' });
  made.must('part.set', { id: 'can', name: 'oil', meets: ['oil'] });
  made.must('part.set', { id: 'c1', name: 'cabin filter', meets: ['cabin'] });
  made.must('lot.set', { id: 'oil-lot', part: 'can', quantity: 5, receivedOn: day('2026-01-01'), paidMinor: 5000 });
  made.must('lot.set', { id: 'cabin-lot', part: 'c1', quantity: 1, receivedOn: day('2026-01-01') });
  made.must('item.add', { id: 'oil-change', car: 'pip', name: 'engine oil', interval: { repeat: { months: 12, distance: null } }, needs: [{ specification: 'oil', quantity: 4 }] });
  made.must('item.add', { id: 'cabin-filter', car: 'pip', name: 'cabin filter', interval: { repeat: { months: 24, distance: null } }, needs: [{ specification: 'cabin', quantity: 1 }] });
  made.must('tool.set', { id: 'funnel', name: 'funnel', state: 'owned', paidMinor: 600, boughtOn: day('2026-01-01'), spreadOver: 3 });
  made.must('task-tools.set', { item: 'oil-change', tools: ['funnel'] });
  return made;
}

describe('what was done, and what each thing cost', () => {
  test('a part that one item takes, its tool and its minutes are its own; what is for none alone is for all; a lot of unknown cost leaves its item unknown', () => {
    const made = household();
    made.must('record.add', {
      id: 'r1', car: 'pip', date: day('2026-11-01'),
      lines: [{ item: 'oil-change', minutes: 30 }, { item: 'cabin-filter' }, { name: 'wash', minutes: 20 }, { item: null, name: 'horn', outcome: 'not-done' }],
      costs: [{ kind: 'consumables', text: 'rags', amountMinor: 100 }, { kind: 'parts', text: 'washer', amountMinor: 40, item: 'oil-change' }],
      lotsUsed: [{ lot: 'oil-lot', quantity: 4 }, { lot: 'cabin-lot', quantity: 1 }],
    });
    const facts = made.facts();
    const work = doneWork(facts, facts.all(workRecords), things, householdAccount(facts, TODAY).costs, 1200);
    expect(work.done).toEqual([{ id: 'oil', text: 'engine oil' }, { id: 'r1/1', text: 'cabin filter' }, { id: 'wash', text: 'wash' }]);
    // By hand: 4 of 5 litres are 40.00, the washer 0.40, a third of the funnel 2.00, half an hour at 12.00 is 6.00, 20 minutes 4.00; of the filter neither price nor minutes are known.
    expect(work.costs.filter((one) => one.cost === null || wholeCost(one.cost) > 0).map((one) => [one.things.join('+'), one.cost === null ? null : wholeCost(one.cost)]).sort()).toEqual([
      ['oil+r1/1+wash', 100], ['oil', 200], ['oil', 40], ['oil', 4000], ['oil', 600], ['r1/1', null], ['r1/1', null], ['wash', 400],
    ]);
  });

  test('a garage takes none of my minutes', () => {
    const made = household();
    made.must('record.add', { id: 'r2', car: 'pip', date: day('2026-11-02'), place: 'garage', lines: [{ item: 'oil-change', minutes: 30 }], costs: [{ kind: 'labour', text: 'labour', amountMinor: 5000 }] });
    const facts = made.facts();
    const work = doneWork(facts, facts.all(workRecords), things, householdAccount(facts, TODAY).costs, 1200);
    expect(work.costs.map((one) => (one.cost === null ? null : wholeCost(one.cost)))).toEqual([0, 5000]);
  });
});
