import type { ImportView } from '../../../shared-core/views/import/import-view.ts';
import type { HouseholdWords } from '../../ui/household-words.ts';
import { tell } from '../../ui/words/tell.ts';

export type ImportedRow = ImportView['first'][number];

/** What a row is understood to mean, part by part: car, day and reading first. @example understoodWords(row, cars, words)[0] //=> 'Heron, 5 Jan 2026, 41 500 km' */
export function understoodWords(row: ImportedRow, cars: ImportView['cars'], words: HouseholdWords): string[] {
  const { date, reading, lines, outcome, costMinor, note } = row;
  const car = cars.find(({ id }) => id === row.car)?.name;
  const first = [...(car === undefined ? [] : [car]), ...(date === null ? [] : [words.date(date)]), ...(reading === null ? [] : [words.distance(reading.value, reading.unit)])];
  const came = outcome === null || outcome === 'done' ? [] : [tell('import-work.outcome', { outcome: tell(`import-work-outcome.${outcome}`) })];
  return [
    ...(first.length === 0 ? [] : [first.join(', ')]),
    ...lines.map(({ item, name, work }) => (item === null ? tell('import-work.own', { name }) : tell(`import-work.${work}`, { name }))),
    ...came,
    ...(costMinor === null ? [] : [words.money(costMinor)]),
    ...placeWords(row),
    ...(note === '' ? [] : [tell('import-work.note', { note })]),
  ];
}

function placeWords({ place, placeName, by }: ImportedRow): string[] {
  const where = placeName ?? (place === null ? null : tell(`import-work.${place}`));
  const who = by === null ? [] : [tell('import-work.by', { who: by })];
  return where === null ? who : [[where, ...who].join(', ')];
}
