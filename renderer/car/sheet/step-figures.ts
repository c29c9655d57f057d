import type { CardView, FigureView } from '../../../shared-core/views/card-view.ts';
import { tell, type WordKey } from '../../ui/words/tell.ts';
import { unitText } from '../../../shared-core/units/unit-text.ts';
import type { RefDraft, StepDraft, TorqueDraft } from './sheet-draft.ts';

/** The card's figure under a key, entered or missed; null where the card does not have it. */
export function figureOn(card: CardView, key: string): FigureView | null {
  return card.groups.flatMap((group) => group.figures).find((figure) => figure.key === key) ?? null;
}

/** What a figure is called and says. @example refWords(card, ref) //=> 'Oil drain plug: 30 N·m' */
export function refWords(card: CardView, { figure, name }: RefDraft): string {
  if (figure === '') return tell('sheet-edit.not-chosen');
  const on = figureOn(card, figure);
  return tell('sheet-edit.figure-is', { name: on?.name ?? name, value: on === null || !on.entered ? tell('job.not-entered') : on.text });
}

/** A torque as a step's line says it. */
export function torqueWords(card: CardView, torque: TorqueDraft): string {
  if (torque.by === 'figure') return refWords(card, torque);
  const { name, value, unit, thread, source } = torque;
  const typed = `${value} ${unitText(unit as 'Nm')}${thread === '' ? '' : ` (${thread})`}`;
  return tell('sheet-edit.torque-own-is', { name, value: typed, source });
}

/** All that a step has beside its words, each as one line. */
export function stepLines(card: CardView, step: StepDraft, names: { readonly leftOver: (what: string) => string }): readonly string[] {
  const { accessWay, accessName, torques, fluids, figures, tools, measure, measureName, measurePlace, disposal } = step;
  const texts = (lines: readonly { readonly text: string }[]) => lines.map(({ text }) => text).filter((text) => text !== '').join(', ');
  const place = measurePlace === '' ? '' : `, ${tell(`measured-place.${measurePlace}` as WordKey)}`;
  return [
    ...(accessWay === '' ? [] : [tell(`sheet-edit.access-${accessWay}-is`, { access: accessName })]),
    ...torques.map((one) => torqueWords(card, one)),
    ...fluids.map((one) => [one.name, ...[one.quantity, one.specification].filter((ref) => ref.figure !== '').map((ref) => valueOf(card, ref))].join(', ')),
    ...figures.map((one) => refWords(card, one)),
    ...(measure === '' ? [] : [tell('sheet-edit.measure-is', { what: `${measureName === '' ? tell(`measured.${measure}` as WordKey) : measureName}${place}` })]),
    ...(texts(tools) === '' ? [] : [tell('job.step-tools', { tools: texts(tools) })]),
    ...(disposal.length === 0 ? [] : [tell('sheet-edit.left-over-is', { what: disposal.map(names.leftOver).join(', ') })]),
  ];
}

function valueOf(card: CardView, ref: RefDraft): string {
  const on = figureOn(card, ref.figure);
  return on?.entered === true ? on.text : refWords(card, ref);
}
