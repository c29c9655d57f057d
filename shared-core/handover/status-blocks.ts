import { sayDate } from '../result/words/say.ts';
import { heading, paragraph, table, type Block } from './document-value.ts';
import type { HistoryInput } from './history-input.ts';
import type { StatusState } from './history-status.ts';
import { sayLeftOut, sayReckonedWith } from './left-out.ts';
import { isWhole } from './pack-period.ts';
import type { StatusElement } from './status-input.ts';

const NAMES: Readonly<Record<StatusElement, string>> = {
  'whole-distance': 'Whole distance',
  'limited-parts': 'Parts that expire or are measured against a limit',
  'since-last-done': 'Since each item was last done',
  inspection: 'Inspections that a certificate holds',
  recalls: 'Recalls of the maker',
  changes: 'Changes to the car',
};

const STATES: Readonly<Record<StatusState, string>> = { told: 'told', 'in-part': 'told in part', 'not-known': 'not known', 'none-written': 'none written down' };

const CHANGES = 'A change is told apart from other work only where it was planned as a wish or as something done once; other work that changed the car stands among the records.';

/** How the car stands on the day, element by element; one of which nothing can be told is there and says so. */
export function statusBlocks({ status, period, leftOut, today }: HistoryInput): Block[] {
  const [hidden, reckoned] = [sayLeftOut(leftOut), sayReckonedWith(leftOut)];
  const left = status.on === today ? '' : ' The car left its keeper on that day.';
  return [
    heading(2, `Status on ${sayDate(status.on)}`),
    paragraph(`What the records of an aircraft must tell when it changes hands, by analogy: ${status.held} of ${status.elements.length} are told whole.${left} What is not known is said to be so.`),
    ...(isWhole(period) ? [] : [paragraph(`It tells of the days shown${hidden === '' ? '' : `; not shown: ${hidden}`}.${reckoned === '' ? '' : ` Figures of the day are reckoned with what is not shown as well: ${reckoned}.`}`)]),
    table('The elements, and how much of each is told', [['Element', 3], ['Told', 2]], status.elements.map((one) => [NAMES[one.element], `${STATES[one.state]}${countOf(one)}`])),
    ...status.elements.flatMap(({ element, lines }) => (lines.length === 0 ? [] : [table(NAMES[element], [['What', 3], ['How it stands', 7]], lines.map((one) => [one.name, one.text]))])),
    paragraph(CHANGES),
    { kind: 'new-page' },
  ];
}

function countOf({ state, lines }: HistoryInput['status']['elements'][number]): string {
  return state === 'in-part' ? `: ${lines.filter((one) => one.known).length} of ${lines.length}` : '';
}
