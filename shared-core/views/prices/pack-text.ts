import { refuse, ok, type Result } from '../../result/result.ts';

interface NamedUnit {
  readonly unit: string;
  readonly factor: number;
}

/** Words for units, with how much of the specification's own unit they are. Source: SI prefixes; the words are common practice. */
const UNITS: ReadonlyMap<string, NamedUnit> = new Map<string, NamedUnit>([
  ...['l', 'lt', 'ltr', 'litre', 'litres', 'liter', 'liters'].map((word) => [word, { unit: 'litre', factor: 1 }] as const),
  ...['ml', 'millilitre', 'millilitres'].map((word) => [word, { unit: 'litre', factor: 0.001 }] as const),
  ...['cl'].map((word) => [word, { unit: 'litre', factor: 0.01 }] as const),
  ...['kg', 'kilogram', 'kilograms'].map((word) => [word, { unit: 'kilogram', factor: 1 }] as const),
  ...['g', 'gram', 'grams'].map((word) => [word, { unit: 'kilogram', factor: 0.001 }] as const),
  ...['m', 'metre', 'metres', 'meter', 'meters'].map((word) => [word, { unit: 'metre', factor: 1 }] as const),
  ...['cm'].map((word) => [word, { unit: 'metre', factor: 0.01 }] as const),
  ...['set', 'sets'].map((word) => [word, { unit: 'set', factor: 1 }] as const),
  ...['pc', 'pcs', 'piece', 'pieces', 'each', 'ea', 'off'].map((word) => [word, { unit: 'each', factor: 1 }] as const),
]);

/**
 * How much is in a pack, in the unit of its part; a unit that is another is refused, one that is not named is taken as the part's own.
 *
 * @example packOf('500 ml', 'litre') //=> { ok: true, value: 0.5 }
 * @example packOf('5 kg', 'litre') //=> refused 'price-pack-unit'
 */
export function packOf(text: string, unit: string | null): Result<number> {
  const [, number = '', word = ''] = /^(\d+(?:[.,]\d{1,6})?)\s*x?\s*([a-z]*)\.?$/i.exec(text.trim()) ?? [];
  const named = word === '' ? null : (UNITS.get(word.toLowerCase()) ?? undefined);
  const quantity = Math.round(Number(number.replace(',', '.')) * (named?.factor ?? 1) * 1e6) / 1e6;
  if (number === '' || named === undefined || !(quantity > 0) || quantity > 1_000_000) return refuse('price-pack', { value: text.trim().slice(0, 40) });
  if (Math.abs(quantity * 1000 - Math.round(quantity * 1000)) > 1e-6) return refuse('price-pack', { value: text.trim().slice(0, 40) });
  if (named !== null && named.unit !== (unit ?? 'each')) return refuse('price-pack-unit', { value: text.trim().slice(0, 40), unit: unit ?? 'each' });
  return ok(quantity);
}
