import { meantDates, type DateOrder } from '../../calendar/date-text.ts';
import type { LocalDate } from '../../calendar/local-date.ts';
import { newEntry, type NewEntry } from '../../journal/entry-kind.ts';
import type { Facts } from '../../journal/facts.ts';
import type { Moment } from '../../journal/operation.ts';
import { offers, offerSchema, offerSet, type Offer } from '../../parts/offer.ts';
import { suppliers } from '../../parts/supplier.ts';
import { ok, refuse, type Refusal, type Result } from '../../result/result.ts';
import { minorOf, writtenAmount } from '../../units/amount-text.ts';
import type { GridRow } from '../import/import-grid.ts';
import { unitOfPart } from '../order-lines.ts';
import { said } from '../plan-said.ts';
import { packOf } from './pack-text.ts';
import type { PriceChoices } from './price-columns.ts';
import type { PriceLayout } from './price-layout.ts';
import { priceNames, type PriceNames } from './price-parts.ts';
import type { PriceOutcome, PriceRow } from './price-view.ts';

/** What the rows of a price list are decided with. */
export interface PriceDeciding {
  readonly facts: Facts;
  readonly moment: Moment;
  readonly currency: string;
  readonly choices: PriceChoices;
  readonly layout: PriceLayout;
  readonly dateOrder: DateOrder | null;
}

interface MeantPrice {
  readonly supplier: string;
  readonly part: string;
  readonly partName: string;
  readonly number: string | null;
  readonly quantity: number;
  readonly priceMinor: number;
  readonly seenOn: LocalDate;
}

/** Every row with what it comes to, and the entries of those that change something; a bad row is left out and says why. */
export function decidePrices(deciding: PriceDeciding): { readonly rows: readonly PriceRow[]; readonly entries: readonly NewEntry[] } {
  const names = priceNames(deciding.facts);
  const standing = new Map<string, Offer[]>();
  for (const offer of deciding.facts.all(offers)) push(standing, `${offer.supplier} ${offer.part}`, offer);
  const lines = new Map<string, number>();
  const entries: NewEntry[] = [];
  const rows = deciding.layout.rows.map((row): PriceRow => {
    const meant = meaning(deciding, names, row);
    if (!meant.ok) return leftOut(row, meant.refusal);
    const key = `${meant.value.supplier} ${meant.value.part} ${meant.value.quantity}`;
    const before = lines.get(key);
    if (before !== undefined) return leftOut(row, refuse('price-twice', { line: before }).refusal);
    lines.set(key, row.line);
    const now = standing.get(`${meant.value.supplier} ${meant.value.part}`)?.find((one) => one.quantity === meant.value.quantity) ?? null;
    const outcome = outcomeOf(now, meant.value);
    if (outcome !== 'known') entries.push(newEntry(offerSet, offerOf(now, meant.value, deciding.moment)));
    return shown(deciding.facts, row, meant.value, outcome, now);
  });
  return { rows, entries };
}

function push(map: Map<string, Offer[]>, key: string, offer: Offer): void {
  map.set(key, [...(map.get(key) ?? []), offer]);
}

/** A price seen before the one that stands says nothing new; nor does the same one on the same day. */
function outcomeOf(now: Offer | null, { priceMinor, seenOn }: MeantPrice): PriceOutcome {
  if (now === null) return 'new-offer';
  if (seenOn < now.seenOn || (seenOn === now.seenOn && priceMinor === now.priceMinor && now.withdrawnOn === null)) return 'known';
  return priceMinor === now.priceMinor && now.withdrawnOn === null ? 'seen-again' : 'new-price';
}

/** What the list does not say stays: tax, deposit, the most that can be had. A step that is no cheaper than the new price goes. */
function offerOf(now: Offer | null, { supplier, part, number, quantity, priceMinor, seenOn }: MeantPrice, moment: Moment): Offer {
  const bare = { id: moment.newId(), supplier, part, number, quantity, priceMinor, taxAdded: null, depositMinor: 0, most: null, breaks: [], seenOn, withdrawnOn: null };
  return offerSchema.parse(now === null ? bare : { ...now, number: number ?? now.number, priceMinor, breaks: now.breaks.filter((step) => step.priceMinor < priceMinor), seenOn, withdrawnOn: null });
}

function meaning({ facts, moment, currency, choices, layout, dateOrder }: PriceDeciding, names: PriceNames, row: GridRow): Result<MeantPrice> {
  const cell = (column: keyof PriceLayout['columns']) => (layout.columns[column] === null ? '' : (row.cells[layout.columns[column] - 1] ?? '').trim().replace(/^'(?=[=+\-@])/, ''));
  const formula = layout.columns.price === null ? -1 : row.cells.findIndex((one) => /^[=@]/.test(one.trim()));
  if (formula >= 0) return refuse('import-formula', { column: formula + 1, value: (row.cells[formula] ?? '').trim().slice(0, 40) });
  const chosen = choices.supplier === null ? null : facts.get(suppliers, choices.supplier);
  const supplier = cell('supplier') !== '' ? names.supplier(cell('supplier')) : chosen === null ? refuse('price-no-supplier') : ok(chosen);
  if (!supplier.ok) return supplier;
  if (cell('number').length > 60) return refuse('text-too-long', { field: 'number', most: 60 });
  const part = names.part(supplier.value.id, cell('number'), cell('name'));
  if (!part.ok) return part;
  const quantity = cell('pack') === '' ? ok(1) : packOf(cell('pack'), unitOfPart(facts, part.value.id));
  if (!quantity.ok) return quantity;
  const price = priceOf(cell('price'), currency, choices);
  if (!price.ok) return price;
  const seenOn = seenOf(cell('date'), dateOrder, choices, moment.today);
  if (!seenOn.ok) return seenOn;
  return ok({ supplier: supplier.value.id, part: part.value.id, partName: part.value.name, number: cell('number') === '' ? null : cell('number'), quantity: quantity.value, priceMinor: price.value, seenOn: seenOn.value });
}

function priceOf(text: string, currency: string, { decimalMark }: PriceChoices): Result<number> {
  if (text === '') return refuse('price-missing');
  const amount = writtenAmount(text, currency);
  if (!amount.ok) return amount;
  const minor = minorOf(amount.value, currency, decimalMark);
  if (!minor.ok) return minor;
  if (minor.value === null) return refuse('price-mark-open', { value: text.slice(0, 40) });
  return minor.value < 0 ? refuse('import-amount', { value: text.slice(0, 40), currency }) : ok(minor.value);
}

function seenOf(text: string, order: DateOrder | null, { seenOn }: PriceChoices, today: LocalDate): Result<LocalDate> {
  if (text === '') return seenOn !== null && seenOn > today ? refuse('date-in-future', { date: seenOn }) : ok(seenOn ?? today);
  const meant = meantDates(text, today);
  const dates = new Set(Object.values(meant));
  const date = order === null ? (dates.size === 1 ? [...dates][0] : undefined) : meant[order];
  if (date === undefined) return refuse('import-not-a-date', { value: text.slice(0, 40) });
  return date > today ? refuse('date-in-future', { date }) : ok(date);
}

const written = (row: GridRow) => row.cells.join(' · ').slice(0, 120);

function leftOut(row: GridRow, refusal: Refusal): PriceRow {
  const outcome = refusal.code === 'price-no-part' ? 'no-part' : 'refused';
  return { line: row.line, written: written(row), outcome, supplierName: null, partName: null, quantity: null, unit: null, priceMinor: null, beforeMinor: null, seenOn: null, said: said({ key: refusal.code, values: refusal.values }) };
}

function shown(facts: Facts, row: GridRow, meant: MeantPrice, outcome: PriceOutcome, now: Offer | null): PriceRow {
  return {
    line: row.line, written: written(row), outcome, supplierName: facts.get(suppliers, meant.supplier)?.name ?? meant.supplier, partName: meant.partName, quantity: meant.quantity, unit: unitOfPart(facts, meant.part),
    priceMinor: meant.priceMinor, beforeMinor: now?.priceMinor ?? null, seenOn: meant.seenOn, said: outcome === 'known' && now !== null ? said({ key: 'price-known', values: { date: now.seenOn } }) : null,
  };
}
