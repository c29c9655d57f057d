import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import { change, type Changed } from '../../ui/change.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import { intervalDraft, readInterval, type IntervalDraft } from './interval-draft.ts';
import { itemMeasureDraft, readItemMeasure, type ItemMeasureDraft } from './item-measure-draft.ts';

type Item = CarView['items'][number]['item'];
type Car = CarView['car'];

/** What is typed into the form of a service item. */
export interface ItemDraft extends IntervalDraft, ItemMeasureDraft {
  readonly name: string;
  readonly work: string;
  readonly harm: string;
  readonly anchor: string;
  readonly firstDate: string;
  readonly lastValidDay: string;
  readonly history: string;
  readonly printedDate: string;
  readonly source: string;
  readonly confirmed: boolean;
  readonly minutes: string;
  readonly place: string;
  readonly garagePrice: string;
}

/** The form as it opens: a known item as it stands, a new one with the car's unit. */
export function itemDraft(item: Item | null, car: Car, currency: string): ItemDraft {
  const anchor = item?.anchor;
  return {
    name: item?.name ?? '',
    work: item?.work ?? 'replace',
    harm: item?.harm ?? 'damage',
    ...intervalDraft(item?.interval ?? null, car.unit),
    anchor: anchor?.kind ?? 'completion',
    firstDate: anchor?.kind === 'calendar' ? anchor.firstDate : '',
    lastValidDay: anchor?.kind === 'keep-date' ? anchor.lastValidDay : '',
    history: item?.history ?? 'unknown',
    printedDate: item?.printedDate ?? '',
    source: item?.source ?? '',
    confirmed: item?.confirmed ?? false,
    minutes: item?.minutes?.toString() ?? '',
    place: item?.place ?? 'either',
    garagePrice: item?.garagePrice == null ? '' : amountText(item.garagePrice, currency),
    ...itemMeasureDraft(item?.measure ?? null),
  };
}

/** Adds the item to the car, or changes it. */
export async function sendItem(draft: ItemDraft, item: Item | null, car: Car, currency: string): Promise<Result<Changed<'item.add'>>> {
  const read = composeItem(draft, currency);
  if (!read.ok) return read;
  return item === null ? change('item.add', { ...read.value, car: car.id }) : change('item.change', { ...read.value, id: item.id });
}

type Typed = 'name' | 'work' | 'harm' | 'anchor' | 'history' | 'printedDate' | 'source' | 'confirmed' | 'minutes' | 'place' | 'garagePrice' | 'measure';
type ItemFields = Required<Pick<RequestOf<'item.add'>, Typed>> & { readonly interval: Item['interval'] };

/** Reads the form's fields as the item they describe. */
export function composeItem(draft: ItemDraft, currency: string): Result<ItemFields> {
  const read = new FieldsRead();
  return read.whole({
    name: draft.name,
    work: draft.work as Item['work'],
    harm: draft.harm as Item['harm'],
    interval: readInterval(draft, read),
    anchor: anchorOf(draft, read),
    history: draft.history as Item['history'],
    printedDate: read.dateOrNull('printedDate', draft.printedDate),
    source: textOrNull(draft.source),
    confirmed: draft.confirmed,
    minutes: read.wholeOrNull('minutes', draft.minutes),
    place: draft.place as Item['place'],
    garagePrice: read.moneyOrNull('garagePrice', draft.garagePrice, currency),
    measure: readItemMeasure(draft, read),
  });
}

function anchorOf(draft: ItemDraft, read: FieldsRead): Item['anchor'] {
  if (draft.anchor === 'calendar') {
    const firstDate = read.date('anchor.firstDate', draft.firstDate);
    if (firstDate !== undefined) return { kind: 'calendar', firstDate };
  }
  if (draft.anchor === 'keep-date') {
    const lastValidDay = read.date('anchor.lastValidDay', draft.lastValidDay);
    if (lastValidDay !== undefined) return { kind: 'keep-date', lastValidDay };
  }
  return { kind: 'completion' };
}
