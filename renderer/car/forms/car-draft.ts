import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import type { Choice } from '../../ui/household-choices.ts';
import { isWordKey, tell } from '../../ui/words/tell.ts';

type Car = CarView['car'];

/** What is typed into the form of a car. */
export interface CarDraft {
  readonly name: string;
  readonly description: string;
  readonly year: string;
  readonly power: string;
  readonly unit: string;
  readonly firstRegistered: string;
  readonly keptSince: string;
  readonly declared: string;
  readonly registration: string;
  readonly vin: string;
  readonly use: string;
  readonly severeUse: string;
  readonly laidUpMonths: readonly number[];
}

/** The form as it opens: a known car as it stands, a new one with the household's unit. */
export function carDraft(car: Car | null, unit: 'km' | 'mi'): CarDraft {
  return {
    name: car?.name ?? '',
    description: car?.description ?? '',
    year: car?.year?.toString() ?? '',
    power: car?.power ?? 'petrol',
    unit: car?.unit ?? unit,
    firstRegistered: car?.firstRegistered ?? '',
    keptSince: car?.keptSince ?? '',
    declared: car?.declaredAYear?.value.toString() ?? '',
    registration: car?.registration ?? '',
    vin: car?.vin ?? '',
    use: car?.use ?? 'everyday',
    severeUse: String(car?.severeUse ?? 1),
    laidUpMonths: car?.laidUpMonths ?? [],
  };
}

/** Adds the car, or changes it. */
export async function sendCar(draft: CarDraft, car: Car | null): Promise<Result<Changed<'car.add'>>> {
  const read = composeCar(draft);
  if (!read.ok) return read;
  return car === null ? change('car.add', read.value) : change('car.change', { ...read.value, id: car.id });
}

type CarFields = Required<Pick<RequestOf<'car.add'>, keyof Omit<CarDraft, 'declared'> | 'declaredAYear'>>;

/** Reads the form's fields as the car they describe. */
export function composeCar(draft: CarDraft): Result<CarFields> {
  const read = new FieldsRead();
  const unit = draft.unit as Car['unit'];
  return read.whole({
    name: draft.name,
    description: textOrNull(draft.description),
    year: read.wholeOrNull('year', draft.year),
    power: draft.power as Car['power'],
    unit,
    firstRegistered: read.dateOrNull('firstRegistered', draft.firstRegistered),
    keptSince: read.dateOrNull('keptSince', draft.keptSince),
    declaredAYear: read.distanceOrNull('declaredAYear', draft.declared, unit),
    registration: textOrNull(draft.registration),
    vin: textOrNull(draft.vin)?.toUpperCase().replaceAll(' ', '') ?? null,
    use: draft.use as Car['use'],
    severeUse: Number(draft.severeUse),
    laidUpMonths: [...draft.laidUpMonths],
  });
}

const SEVERE = ['1', '0.75', '0.5', '0.4'];

/** How hard a car is used; a factor set elsewhere is offered as it is. */
export function severeChoices(now: string): Choice[] {
  return [...new Set([...SEVERE, now])].map((value) => {
    const key = `severe.${value}`;
    return { value, label: isWordKey(key) ? tell(key) : tell('severe.now', { percent: Math.round(Number(value) * 100) }) };
  });
}
