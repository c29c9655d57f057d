import type { OrderAnswer } from './order-answer.ts';
import type { OrderInstance } from './order-instance.ts';

/** Quantities as exact whole numbers of 10^-digits, digits being enough for every product of two quantities here. */
export interface Exactly {
  /** Exact units of a quantity. */
  units(quantity: number): bigint;
  /** Exact units of a product of two quantities: what so much of a kit holds of a part. */
  product(a: number, b: number): bigint;
}

/** The finest quantity a verifier reads. */
const MOST_DIGITS = 15;

/** A way to reckon all quantities of an instance and its answer exactly; null where one is written too fine. */
export function exactly(instance: OrderInstance, answer: OrderAnswer): Exactly | null {
  const quantities = [
    ...[...instance.offers, ...instance.needs, ...instance.shelf, ...answer.allocation, ...answer.left].map(({ quantity }) => quantity),
    ...instance.needs.flatMap(({ step }) => step ?? []),
    ...instance.parts.flatMap(({ contains }) => contains.map(({ quantity }) => quantity)),
  ];
  const digits = quantities.reduce((most, quantity) => Math.max(most, digitsOf(quantity)), 0);
  if (digits > MOST_DIGITS) return null;
  return {
    units: (quantity) => scaled(quantity, digits) * 10n ** BigInt(digits),
    product: (a, b) => scaled(a, digits) * scaled(b, digits),
  };
}

/** Digits after the point, as the number is written shortest. */
function digitsOf(quantity: number): number {
  const [figures = '', exponent = '0'] = String(quantity).split('e');
  return Math.max(0, (figures.split('.')[1] ?? '').length - Number(exponent));
}

function scaled(quantity: number, digits: number): bigint {
  const [figures = '0', exponent = '0'] = String(quantity).split('e');
  const [whole = '0', after = ''] = figures.split('.');
  return BigInt(whole + after) * 10n ** BigInt(digits - after.length + Number(exponent));
}
