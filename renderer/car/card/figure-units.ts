import { must } from '../../../shared-core/result/assert.ts';
import { depthUnitSchema } from '../../../shared-core/units/depth.ts';
import { pressureUnitSchema } from '../../../shared-core/units/pressure.ts';
import { torqueUnitSchema } from '../../../shared-core/units/torque.ts';
import { unitText } from '../../../shared-core/units/unit-text.ts';
import { volumeUnitSchema } from '../../../shared-core/units/volume.ts';
import type { CardView, FigureView } from '../../../shared-core/views/card-view.ts';
import type { Choice } from '../../ui/household-choices.ts';
import { tell } from '../../ui/words/tell.ts';

type Measured = Exclude<FigureView['kind'], 'text'>;

const UNITS = { volume: volumeUnitSchema.options, torque: torqueUnitSchema.options, pressure: pressureUnitSchema.options, depth: depthUnitSchema.options } as const;
const KINDS: readonly Measured[] = ['volume', 'torque', 'pressure', 'depth'];

/** The units that a figure of a kind may be typed in. @example unitsOf('pressure')[0] //=> { value: 'bar', label: 'bar' } */
export function unitsOf(kind: Measured): Choice[] {
  return UNITS[kind].map((unit) => ({ value: unit, label: unitText(unit) }));
}

/** What a figure of one's own may be typed in: words, or any unit of a card. */
export function everyUnit() {
  return [{ value: '', label: tell('unit-of.text') }, ...KINDS.map((kind) => ({ group: tell(`unit-of.${kind}`), items: unitsOf(kind) }))];
}

/** The unit with which a figure's form opens: its own, else that of the card's other figures of its kind, else the first. */
export function unitToBegin(card: CardView, figure: FigureView): string {
  if (figure.kind === 'text') return '';
  const { kind } = figure;
  return typedUnit(figure) ?? card.groups.flatMap((group) => group.figures).filter((one) => one.kind === kind).map(typedUnit).find((unit) => unit !== null) ?? must(UNITS[kind][0], kind);
}

function typedUnit({ value }: FigureView): string | null {
  return value === null || value.kind === 'text' ? null : value.typed.unit;
}
