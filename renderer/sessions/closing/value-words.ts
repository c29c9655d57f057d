import type { ClosingCar } from '../../../shared-core/views/closing-schema.ts';
import { isWordKey, tell } from '../../ui/words/tell.ts';

type Read = ClosingCar['values'][number]['read'];

/** What was read, in words. @example valueWords(read) //=> 'Brake pad, front left: 5.5 mm' */
export function valueWords(read: Read): string {
  if (read.kind === 'torque') return tell('closing.value', { what: read.name, value: `${read.typed.value} ${tell(`job.unit-${read.typed.unit}`)}` });
  const key = `measured.${read.what}`;
  const what = read.name ?? (isWordKey(key) ? tell(key) : read.what.replaceAll('-', ' '));
  const at = read.place === null ? null : `measured-place.${read.place}`;
  const where = at !== null && isWordKey(at) ? tell('closing.value-at', { what, place: tell(at) }) : what;
  return tell('closing.value', { what: where, value: `${read.typed.value} ${tell(`sheet-unit.${read.typed.unit}`)}` });
}
