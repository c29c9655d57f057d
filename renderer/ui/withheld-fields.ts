import { isWordKey, tell } from './words/tell.ts';

/** Fields that were withheld, by what they are called on the screens. @example withheldFields(['vin']) //=> 'Vehicle identification number' */
export function withheldFields(fields: readonly string[]): string {
  return fields.map((field) => {
    const key = `handover-field.${field}`;
    return isWordKey(key) ? tell(key) : field;
  }).join(', ');
}
