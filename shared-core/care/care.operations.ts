import { addItem, changeItem } from './set-item.ts';
import { addObligation, renewObligation } from './set-obligation.ts';

/** What can be asked of the care by name. */
export const careOperations = {
  'item.add': addItem,
  'item.change': changeItem,
  'obligation.add': addObligation,
  'obligation.renew': renewObligation,
} as const;
