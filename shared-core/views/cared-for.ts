import { isOnce } from '../care/limit.ts';
import type { ItemCare } from './car-care.ts';

/** Whether an item falls due at all: what is done once, and has no limit of any kind, stands in no window. */
export function isCaredFor({ item, window }: Pick<ItemCare, 'item' | 'window'>): boolean {
  return !isOnce(item.interval) || window.limb !== null;
}
