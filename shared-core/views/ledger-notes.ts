import { cars } from '../fleet/car.ts';
import { renewals } from '../care/renewal.ts';
import type { Facts } from '../journal/facts.ts';
import { ownMoney } from '../ledger/own-money.ts';
import { grouped, sumOf, type Account } from '../ledger/posting.ts';
import { lots } from '../parts/lot.ts';
import { tools } from '../parts/tool.ts';
import { workRecords } from '../records/work-record.ts';
import type { Message } from '../result/result.ts';
import { carName, partName } from './money-names.ts';

/** What the sums of the ledger do not hold: work and parts of which nobody said what they cost, and what others paid. */
export function ledgerNotes(facts: Facts, account: Account): readonly Message[] {
  const own = ownMoney(facts);
  const used = new Set(facts.all(workRecords).flatMap((record) => record.lotsUsed.map((use) => use.lot)));
  const unknownLots = facts.all(lots).filter((lot) => lot.paidMinor === null && used.has(lot.id)).length;
  const paidFree = facts.all(workRecords).filter((record) => record.place === 'garage' && own(record, record.date) && record.costs.length === 0 && record.printedTotalMinor === null);
  const freeDuties = facts.all(renewals).filter((one) => own(one, one.on) && one.paidMinor === null).length;
  const before = facts.all(cars).flatMap((car): Message[] => {
    const others = facts.ofCar(workRecords, car.id).filter((record) => !own(record, record.date) && (record.costs.length > 0 || record.printedTotalMinor !== null)).length;
    return others === 0 ? [] : [{ key: 'ledger-note-others-paid', values: { car: carName(facts, car.id), records: others } }];
  });
  const unspread = facts.all(tools).filter((tool) => tool.paidMinor !== undefined && tool.spreadOver === undefined).map((tool): Message => ({ key: 'ledger-note-tool-not-spread', values: { tool: tool.name } }));
  return [
    ...(account.payments.length === 0 ? [{ key: 'ledger-note-nothing-paid', values: {} }] : []),
    ...(paidFree.length === 0 ? [] : [{ key: 'ledger-note-garage-without-cost', values: { records: paidFree.length } }]),
    ...(freeDuties === 0 ? [] : [{ key: 'ledger-note-duty-without-cost', values: { renewals: freeDuties } }]),
    ...(unknownLots === 0 ? [] : [{ key: 'ledger-note-lot-without-cost', values: { lots: unknownLots } }]),
    ...shelfTwice(facts, account),
    ...before, ...unspread,
  ];
}

/** Records of which a line for parts comes to what the part cost that they took off the shelf, within a hundredth. */
function shelfTwice(facts: Facts, { costs }: Account): readonly Message[] {
  return facts.all(workRecords).flatMap((record): Message[] => {
    if (record.lotsUsed.length === 0) return [];
    const lines = record.costs.filter((line) => line.kind === 'parts');
    const taken = grouped(costs.filter((cost) => cost.source.kind === 'record' && cost.source.id === record.id && cost.kind === 'parts' && cost.of !== null), (cost) => cost.of ?? '');
    const twice = [...taken].find(([, rows]) => lines.some((line) => Math.abs(line.amountMinor - sumOf(rows)) <= sumOf(rows) / 100));
    return twice === undefined ? [] : [{ key: 'ledger-note-shelf-twice', values: { title: record.title, part: partName(facts, twice[0]) } }];
  });
}
