import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import type { Choice } from '../../ui/household-choices.ts';
import { tell } from '../../ui/words/tell.ts';

/** Tasks with their cars, in a line. @example tasksByCar([{ car: 'pip', item: 'i', itemName: 'oil' }], [{ value: 'pip', label: 'Pip' }]) //=> 'Pip: oil' */
export function tasksByCar(tasks: PartsView['tools'][number]['takenBy'], cars: readonly Choice[]): string {
  return tasks.map(({ car, itemName }) => tell('needed.task-of', { car: cars.find((one) => one.value === car)?.label ?? car, item: itemName })).join(', ');
}
