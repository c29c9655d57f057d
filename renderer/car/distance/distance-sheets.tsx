import type { ReactNode } from 'react';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import { useWords } from '../../ui/household.tsx';
import type { HouseholdWords } from '../../ui/household-words.ts';
import { SideSheet } from '../../ui/side-sheet.tsx';
import { tell } from '../../ui/words/tell.ts';
import type { DistanceSheet } from './distance-sheet.ts';
import { AllowanceForm } from './forms/allowance-form.tsx';
import { ExpectedForm } from './forms/expected-form.tsx';
import { InstrumentForm } from './forms/instrument-form.tsx';
import { LayUpForm } from './forms/lay-up-form.tsx';
import { UseChangeForm } from './forms/use-change-form.tsx';

interface DistanceSheetsProps {
  readonly view: CarView;
  readonly sheet: DistanceSheet | null;
  readonly onClose: () => void;
}

/** The entry of this leaf that lies over the screen, if any. */
export function DistanceSheets({ view, sheet, onClose }: DistanceSheetsProps) {
  const words = useWords();
  const shown = sheet === null ? null : contentOf(view, sheet, onClose, words);
  return <SideSheet title={shown?.title ?? ''} opened={shown !== null} onClose={onClose}>{shown?.form}</SideSheet>;
}

interface Content {
  readonly title: string;
  readonly form: ReactNode;
}

/** Null where what it was about is no longer there. */
function contentOf(view: CarView, sheet: DistanceSheet, onClose: () => void, words: HouseholdWords): Content | null {
  const car = view.car.name;
  const common = { view, onClose };
  switch (sheet.kind) {
    case 'expected':
      return { title: tell('expected.title', { car }), form: <ExpectedForm {...common} /> };
    case 'lay-up': {
      const layUp = view.layUps.find((one) => one.id === sheet.layUp) ?? null;
      return { title: tell(layUp === null ? 'lay-up.add-title' : 'lay-up.change-title', { car }), form: <LayUpForm {...common} layUp={layUp} ending={sheet.ending} /> };
    }
    case 'use-change': {
      const useChange = view.useChanges.find((one) => one.id === sheet.useChange) ?? null;
      return { title: tell(useChange === null ? 'use-change.add-title' : 'use-change.change-title', { car }), form: <UseChangeForm {...common} useChange={useChange} /> };
    }
    case 'instrument': {
      const instrument = view.instruments.find((one) => one.id === sheet.instrument);
      return instrument === undefined ? null : { title: tell('instrument-form.title', { date: words.date(instrument.date) }), form: <InstrumentForm {...common} instrument={instrument} /> };
    }
    case 'allowance': {
      const allowance = view.allowances.find((one) => one.id === sheet.allowance) ?? null;
      return { title: tell(allowance === null ? 'allowance.add-title' : 'allowance.change-title', { car, name: allowance?.name ?? '' }), form: <AllowanceForm {...common} allowance={allowance?.allowance ?? null} /> };
    }
  }
}
