import { sayOf } from '../result/words/say.ts';
import { heading, paragraph, table, type Block } from './document-value.ts';
import type { HistoryInput } from './history-input.ts';
import { sayLeftOut, sayReckonedWith } from './left-out.ts';
import { isWhole } from './pack-period.ts';
import type { StatusElement } from './status-input.ts';

/** How the car stands on the day, element by element; one of which nothing can be told is there and says so. */
export function statusBlocks({ status, period, leftOut, today }: HistoryInput): Block[] {
  const [hidden, reckoned] = [sayLeftOut(leftOut), sayReckonedWith(leftOut)];
  const intro = status.on === today ? 'status-intro' : 'status-intro-left';
  return [
    heading(2, sayOf('status-on', { date: status.on })),
    paragraph(sayOf(intro, { held: status.held, of: status.elements.length })),
    ...(isWhole(period) ? [] : [paragraph([hidden === '' ? sayOf('status-days') : sayOf('status-days-hidden', { hidden }), ...(reckoned === '' ? [] : [sayOf('status-reckoned', { reckoned })])].join(' '))]),
    table(sayOf('status-caption'), [[sayOf('status-element'), 3], [sayOf('status-told-head'), 2]], status.elements.map((one) => [nameOf(one.element), stateOf(one)])),
    ...status.elements.flatMap(({ element, lines }) => (lines.length === 0 ? [] : [table(nameOf(element), [[sayOf('history-what'), 3], [sayOf('status-how'), 7]], lines.map((one) => [one.name, one.text]))])),
    paragraph(sayOf('status-changes')),
    { kind: 'new-page' },
  ];
}

function nameOf(element: StatusElement): string {
  return sayOf(`status-element-${element}`);
}

function stateOf({ state, lines }: HistoryInput['status']['elements'][number]): string {
  return state === 'in-part' ? sayOf('status-in-part', { known: lines.filter((one) => one.known).length, of: lines.length }) : sayOf(`status-${state}`);
}
