import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { localDate } from '../../../shared-core/calendar/local-date.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { change, type Changed } from '../../ui/change.ts';
import { FieldsRead, textOrNull } from '../../ui/form/read-fields.ts';
import type { Choice } from '../../ui/household-choices.ts';
import { isWordKey, tell } from '../../ui/words/tell.ts';
import { FITTING, startOf, type SetDraft } from '../start/set-draft.ts';
import type { StartingSets } from '../start/use-starting-sets.ts';

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
  /** Of a new car: what its odometer shows, and what its schedule starts from. */
  readonly odometer: string;
  readonly start: SetDraft;
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
    odometer: '',
    start: FITTING,
  };
}

/** Adds the car with all it starts from, in one step. `sets` is null while they are not known. */
export async function sendNewCar(draft: CarDraft, sets: StartingSets | null): Promise<Result<Changed<'car.start'>>> {
  const read = composeCar(draft);
  if (!read.ok) return read;
  const odometer = new FieldsRead();
  const value = odometer.numberOrNull('reading.value', draft.odometer);
  const whole = odometer.whole(value === null ? null : { value, unit: read.value.unit });
  if (!whole.ok) return whole;
  return change('car.start', { ...read.value, reading: whole.value, ...startOf(draft.start, sets) });
}

/** Changes the car. */
export async function sendCar(draft: CarDraft, car: Car): Promise<Result<Changed<'car.change'>>> {
  const read = composeCar(draft);
  return read.ok ? change('car.change', { ...read.value, id: car.id }) : read;
}

/** What is typed so far says which starting set fits; a date that is none yet says nothing. */
export function knownSoFar({ power, year, firstRegistered, keptSince }: CarDraft): RequestOf<'starting-sets.show'> {
  const dateOf = (text: string) => {
    const date = localDate(text);
    return date.ok ? date.value : null;
  };
  return { power: power as Car['power'], year: /^(19|2[01])\d\d$/.test(year.trim()) ? Number(year) : null, firstRegistered: dateOf(firstRegistered), keptSince: dateOf(keptSince) };
}

type CarFields = Required<Pick<RequestOf<'car.add'>, keyof Omit<CarDraft, 'declared' | 'odometer' | 'start'> | 'declaredAYear'>>;

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
