import type { ReactNode } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { SideSheet } from '../../ui/side-sheet.tsx';
import { tell } from '../../ui/words/tell.ts';
import { CorrectForm } from './forms/correct-form.tsx';
import { LimitForm } from './forms/limit-form.tsx';
import { MeasureForm } from './forms/measure-form.tsx';
import { MoveForm } from './forms/move-form.tsx';
import { WheelForm } from './forms/wheel-form.tsx';
import { subjectOf } from './subject-words.ts';
import type { WearSheet } from './wear-sheet.ts';

interface WearSheetsProps {
  readonly view: CarView;
  readonly sheet: WearSheet | null;
  readonly onClose: () => void;
}

/** The entry that lies over the leaf, if any. */
export function WearSheets({ view, sheet, onClose }: WearSheetsProps) {
  const shown = sheet === null ? null : contentOf(view, sheet, onClose);
  return <SideSheet title={shown?.title ?? ''} opened={shown !== null} onClose={onClose}>{shown?.form}</SideSheet>;
}

interface Content {
  readonly title: string;
  readonly form: ReactNode;
}

/** Null where what it was about is no longer there. */
function contentOf(view: CarView, sheet: WearSheet, onClose: () => void): Content | null {
  const car = view.car.name;
  const common = { view, onClose };
  switch (sheet.kind) {
    case 'measure':
      return { title: tell('measure-form.title', { car }), form: <MeasureForm {...common} what={sheet.what} name={sheet.name} /> };
    case 'correct': {
      const series = view.measured.find((one) => one.points.some((point) => point.measurement.id === sheet.measurement));
      const measurement = series?.points.find((point) => point.measurement.id === sheet.measurement)?.measurement;
      if (series === undefined || measurement === undefined) return null;
      return { title: tell('correct-form.title', { subject: subjectOf(series) }), form: <CorrectForm {...common} measurement={measurement} /> };
    }
    case 'limit': {
      const series = view.measured.find((one) => one.key === sheet.series);
      return series === undefined ? null : { title: tell('limit-form.title', { subject: subjectOf(series) }), form: <LimitForm {...common} series={series} /> };
    }
    case 'wheel': {
      const wheel = view.wheels.find((one) => one.wheel.id === sheet.wheel)?.wheel ?? null;
      const title = wheel === null ? tell('wheel-form.add-title', { car }) : tell('wheel-form.change-title', { name: wheel.name });
      return { title, form: <WheelForm {...common} wheel={wheel} /> };
    }
    case 'move':
      return { title: tell('move-form.title', { car }), form: <MoveForm {...common} /> };
  }
}
