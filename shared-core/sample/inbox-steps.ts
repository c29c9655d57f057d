import { addMonths } from '../calendar/add-months.ts';
import { addDays, type LocalDate } from '../calendar/local-date.ts';
import { call, LABEL_PREFIX, type PaperStep, type SampleStep } from './sample-step.ts';

/**
 * What lies in the sample's inbox: a receipt whose work was recorded without it, one whose date can be read two ways, a photograph that a
 * camera dated, and one that needs no record and is set aside. A photograph of a whole car is with the car.
 */
export function inboxSteps(today: LocalDate, currency: string): readonly SampleStep[] {
  const on = addDays(today, -2);
  const wipers = addMonths(today, -23);
  const tyres = addDays(addMonths(today, -5), 4);
  const found = (label: string, name: string, draw: PaperStep['request']['draw']): PaperStep => ({ on, operation: 'paper.keep', label: LABEL_PREFIX + label, request: { name, draw } });
  const receipt = { kind: 'receipt', currency, odometer: null } as const;
  return [
    found('inbox-wipers', 'scan 0001.pdf', { ...receipt, heading: 'the shop by the station', number: 'S-0417', date: wipers, car: 'Pip', lines: [{ text: 'wiper blades V1', amountMinor: 1980 }], totalMinor: 1980 }),
    found('inbox-two-ways', 'scan 0002.pdf', { ...receipt, heading: 'the shop by the station', number: 'S-0552', date: addMonths(today, -4), printedDate: twoWays(addMonths(today, -4)), car: 'not named', lines: [{ text: 'cloths and cleaner', amountMinor: 1140 }], totalMinor: 1140 }),
    found('inbox-tyres', 'photograph 0003.png', { kind: 'photograph', subject: 'tyre-tread', wear: 0.45, seed: 31, taken: { at: `${tyres} 10:42:07`, offset: '+01:00' } }),
    found('inbox-parking', 'scan 0004.pdf', { ...receipt, heading: 'the car park at the harbour', number: 'H-90', date: addDays(today, -20), car: 'not named', lines: [{ text: 'parking, one day', amountMinor: 650 }], totalMinor: 650 }),
    call(on, 'papers.set-aside', { papers: [`${LABEL_PREFIX}inbox-parking`], aside: true }),
    found('inbox-whole-car', 'photograph 0005.png', { kind: 'photograph', subject: 'car', wear: 0.2, seed: 5, taken: { at: `${addDays(today, -10)} 15:20:00`, offset: '+00:00' } }),
    call(on, 'paper.tie', { paper: `${LABEL_PREFIX}inbox-whole-car`, to: [{ kind: 'car', id: 'pip' }] }),
  ];
}

/** A date of a day's month in figures that are both a day and a month, and not the same. @example twoWays('2026-07-25') //=> '05/07/2026' */
function twoWays(date: LocalDate): string {
  const [year, month] = date.split('-');
  return `${month === '05' ? '06' : '05'}/${month}/${year}`;
}
