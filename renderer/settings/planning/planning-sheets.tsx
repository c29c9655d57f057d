import type { ReactNode } from 'react';
import type { PlanningView } from '../../../shared-core/views/planning-view.ts';
import { SideSheet } from '../../ui/side-sheet.tsx';
import { tell } from '../../ui/words/tell.ts';
import { AccessForm } from './forms/access-form.tsx';
import { CarDaysForm } from './forms/car-days-form.tsx';
import { PairForm } from './forms/pair-form.tsx';
import { PlaceDaysForm } from './forms/place-days-form.tsx';
import { PlaceForm } from './forms/place-form.tsx';
import type { PlanningSheet } from './planning-sheet.ts';

interface PlanningSheetsProps {
  readonly view: PlanningView;
  readonly sheet: PlanningSheet | null;
  readonly onClose: () => void;
}

/** The entry that lies over the screen, if any. */
export function PlanningSheets({ view, sheet, onClose }: PlanningSheetsProps) {
  const shown = sheet === null ? null : contentOf(view, sheet, onClose);
  return <SideSheet title={shown?.title ?? ''} opened={shown !== null} onClose={onClose}>{shown?.form}</SideSheet>;
}

interface Content {
  readonly title: string;
  readonly form: ReactNode;
}

/** Null where what it was about is no longer there. */
function contentOf(view: PlanningView, sheet: PlanningSheet, onClose: () => void): Content | null {
  if (sheet.kind === 'place') {
    const place = view.places.find((one) => one.id === sheet.place) ?? null;
    return { title: place === null ? tell('place-form.add-title') : tell('place-form.change-title', { place: place.name }), form: <PlaceForm view={view} place={place} onClose={onClose} /> };
  }
  if (sheet.kind === 'place-days') {
    const place = view.places.find((one) => one.id === sheet.place);
    return place === undefined ? null : { title: tell('place-days-form.title', { place: place.name }), form: <PlaceDaysForm place={place} days={place.days.find((one) => one.id === sheet.days) ?? null} onClose={onClose} /> };
  }
  const car = view.cars.find((one) => one.id === sheet.car);
  if (car === undefined) return null;
  const values = { car: car.name };
  switch (sheet.kind) {
    case 'car-days':
      return { title: tell('car-days-form.title', values), form: <CarDaysForm car={car} days={car.days.find((one) => one.id === sheet.days) ?? null} onClose={onClose} /> };
    case 'access':
      return { title: tell('access-form.title', values), form: <AccessForm car={car} access={car.access.find((one) => one.id === sheet.access) ?? null} onClose={onClose} /> };
    case 'pair':
      return { title: tell('pair-form.title', values), form: <PairForm car={car} onClose={onClose} /> };
  }
}
