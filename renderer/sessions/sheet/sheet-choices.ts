import { useLocalStorage } from '@mantine/hooks';
import { useHousehold } from '../../ui/household.tsx';

/** Units of torque that the sheet can be read in. */
export const SHEET_UNITS = ['Nm', 'lbf-ft', 'lbf-in'] as const;
export type SheetUnit = (typeof SHEET_UNITS)[number];

/** Papers that it prints on. */
export const SHEET_PAPERS = ['A4', 'Letter'] as const;
export type SheetPaper = (typeof SHEET_PAPERS)[number];

/** Countries whose printers hold Letter; all others hold A4. Common practice, no source. */
const LETTER_COUNTRIES = ['US', 'CA', 'MX', 'PH'];

/** The unit of torque, kept by this browser. */
export function useSheetUnit() {
  return useKept('job-sheet-torque', SHEET_UNITS, 'Nm');
}

/** The paper, kept by this browser; until one is chosen, that of the household's country. */
export function useSheetPaper() {
  const country = new Intl.Locale(useHousehold().locale).region ?? '';
  return useKept('job-sheet-paper', SHEET_PAPERS, LETTER_COUNTRIES.includes(country) ? 'Letter' : 'A4');
}

/** One of a few values, kept by this browser; whatever else is found there counts as nothing. */
function useKept<Value extends string>(key: string, values: readonly Value[], first: Value): [Value, (value: Value) => void] {
  const [kept, keep] = useLocalStorage<Value>({ key, defaultValue: first, getInitialValueInEffect: false, serialize: (value) => value, deserialize: (text) => values.find((one) => one === text) ?? first });
  return [kept, keep];
}
