import { tell, isWordKey } from '../../ui/words/tell.ts';
import type { SheetUnit } from './sheet-choices.ts';
import type { Figure, Measure, Torque } from './sheet-types.ts';

/** A torque in the unit that the sheet is read in; null where it is not entered. */
export function torqueText({ entered, inUnits, text }: Torque, unit: SheetUnit): string | null {
  if (!entered) return null;
  return inUnits.find((one) => one.unit === unit)?.text ?? text;
}

/** How it was typed, where that is another unit than the sheet's: what is worked out is rounded. */
export function torqueTyped(torque: Torque, unit: SheetUnit): string | null {
  return torque.entered && torque.typedUnit !== unit ? torque.text : null;
}

/** Where a figure comes from, and whether it is to be looked at again. */
export function sourceWords({ source, note, ...rest }: Torque | Figure): string {
  const onPaper = 'paper' in rest && rest.paper !== null;
  return [source ?? tell(onPaper ? 'job.source-paper' : 'job.no-source'), note].filter((one) => one !== '').join(' · ');
}

/** A figure's value in its own unit and in others. @example figureText(gap) //=> '0.75 mm (0.0295 in)' */
export function figureText({ text, otherUnits }: Figure): string {
  return otherUnits.length === 0 ? text : `${text} (${otherUnits.join(', ')})`;
}

/** What is measured, where, and in what. @example measureWords(depth) //=> 'Tread depth, front left:' */
export function measureWords({ text, place }: Measure): string {
  const at = place === null ? null : `measured-place.${place}`;
  return at !== null && isWordKey(at) ? tell('job.measured-at', { what: text, place: tell(at) }) : tell('job.measured', { what: text });
}

/** What stands after the line to write on. @example measureUnit({ unit: '32nds', ... }) //=> '/32 in' */
export function measureUnit({ unit }: Measure): string {
  return unit === null ? '' : tell(`sheet-unit.${unit}`);
}
