import type { OF_THE_SALE, Withheld } from './withheld-fields.ts';

const WORDS: Readonly<Record<Withheld | (typeof OF_THE_SALE)[number], string>> = {
  costs: 'cost lines', printedTotalMinor: 'totals of receipts', paidMinor: 'what was paid', price: 'prices', garagePrice: 'prices of garages', lotsUsed: 'which lots of parts were used',
  doneBy: 'who did the work', approvedBy: 'who approved it', placeName: 'names of garages', reference: 'references', method: 'by what data it was done', note: 'notes', why: 'reasons of amendments',
  text: 'what was seen', vin: 'vehicle identification number', registration: 'registration', declaredAYear: 'distance expected a year',
  buyer: 'to whom it went', priceMinor: 'what it brought',
};

/** What a field that is kept back is called to a reader. @example withheldWords('doneBy') //=> 'who did the work' */
export function withheldWords(field: string): string {
  return (WORDS as Readonly<Record<string, string | undefined>>)[field] ?? field;
}
