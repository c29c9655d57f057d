import type { Json } from '../journal/canonical-json.ts';

/** The fields of entries that hold ids of things of the car. */
const ID_FIELDS = new Set(['id', 'car', 'item', 'record', 'reading', 'instrument', 'closedBy', 'wheel', 'obligation']);

/** Values with every id renamed, so that two households that used one id for two things can live in one; what `named` does not know is referred to no more. */
export function renameIds(value: Json, named: (id: string) => string | null, field = ''): Json {
  if (typeof value === 'string') return ID_FIELDS.has(field) ? named(value) : value;
  if (Array.isArray(value)) return value.map((one) => renameIds(one as Json, named, field));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, renameIds(one as Json, named, name)]));
}
