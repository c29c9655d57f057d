import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import { change, type Changed } from '../../ui/change.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';

type Item = CarView['items'][number]['item'];
type Car = CarView['car'];

/** What is typed into the form of a service item. */
export interface ItemDraft {
  readonly name: string;
  readonly work: string;
  readonly harm: string;
  readonly months: string;
  readonly distance: string;
  readonly unit: string;
  readonly firstDiffers: boolean;
  readonly firstMonths: string;
  readonly firstDistance: string;
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
  const { first, repeat } = item?.interval ?? { first: null, repeat: null };
  const anchor = item?.anchor;
  return {
    name: item?.name ?? '',
    work: item?.work ?? 'replace',
    harm: item?.harm ?? 'damage',
    months: repeat?.months?.toString() ?? '',
    distance: repeat?.distance?.value.toString() ?? '',
    unit: repeat?.distance?.unit ?? first?.distance?.unit ?? car.unit,
    firstDiffers: JSON.stringify(first) !== JSON.stringify(repeat),
    firstMonths: first?.months?.toString() ?? '',
    firstDistance: first?.distance?.value.toString() ?? '',
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
  };
}

/** Adds the item to the car, or changes it. */
export async function sendItem(draft: ItemDraft, item: Item | null, car: Car, currency: string): Promise<Result<Changed<'item.add'>>> {
  const read = composeItem(draft, currency);
  if (!read.ok) return read;
  return item === null ? change('item.add', { ...read.value, car: car.id }) : change('item.change', { ...read.value, id: item.id });
}

type Typed = 'name' | 'work' | 'harm' | 'anchor' | 'history' | 'printedDate' | 'source' | 'confirmed' | 'minutes' | 'place' | 'garagePrice';
type ItemFields = Required<Pick<RequestOf<'item.add'>, Typed>> & { readonly interval: Item['interval'] };

/** Reads the form's fields as the item they describe. */
export function composeItem(draft: ItemDraft, currency: string): Result<ItemFields> {
  const read = new FieldsRead();
  const unit = draft.unit as Car['unit'];
  const repeat = { months: read.wholeOrNull('interval.repeat.months', draft.months), distance: read.distanceOrNull('interval.repeat.distance', draft.distance, unit) };
  const first = draft.firstDiffers
    ? { months: read.wholeOrNull('interval.first.months', draft.firstMonths), distance: read.distanceOrNull('interval.first.distance', draft.firstDistance, unit) }
    : repeat;
  return read.whole({
    name: draft.name,
    work: draft.work as Item['work'],
    harm: draft.harm as Item['harm'],
    interval: { first, repeat },
    anchor: anchorOf(draft, read),
    history: draft.history as Item['history'],
    printedDate: read.dateOrNull('printedDate', draft.printedDate),
    source: textOrNull(draft.source),
    confirmed: draft.confirmed,
    minutes: read.wholeOrNull('minutes', draft.minutes),
    place: draft.place as Item['place'],
    garagePrice: read.moneyOrNull('garagePrice', draft.garagePrice, currency),
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
