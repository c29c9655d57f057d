import type { ImportView } from '../../../shared-core/views/import/import-view.ts';
import { tell } from '../../ui/words/tell.ts';

interface Counts {
  readonly readings: number;
  readonly records: number;
}

/** What a table brings, in words; null where it brings nothing. @example broughtWords({ readings: 118, records: 24 }) //=> '118 readings and 24 records' */
export function broughtWords({ readings, records }: Counts): string | null {
  const parts = [...(readings === 0 ? [] : [tell('import.readings', { n: readings })]), ...(records === 0 ? [] : [tell('import.records', { n: records })])];
  return parts.length === 0 ? null : listWords(parts);
}

/** The same with the cars it is brought to. @example broughtTo([{ name: 'Heron', readings: 118, records: 24 }]) //=> '118 readings and 24 records of Heron' */
export function broughtTo(cars: readonly Pick<ImportView['cars'][number], 'name' | 'readings' | 'records'>[]): string | null {
  const parts = cars.flatMap((car) => {
    const what = broughtWords(car);
    return what === null ? [] : [tell('import.brings', { what, car: car.name })];
  });
  return parts.length === 0 ? null : parts.join(', ');
}

/** A size as people say it. @example sizeWords(42_300) //=> '42 KB' */
export function sizeWords(bytes: number): string {
  if (bytes < 1000) return tell('import.size-bytes', { n: bytes });
  return bytes < 1_000_000 ? tell('import.size-kb', { n: Math.round(bytes / 1000) }) : tell('import.size-mb', { n: Math.round(bytes / 100_000) / 10 });
}

function listWords(parts: readonly string[]): string {
  const [one = '', other] = parts;
  return other === undefined ? one : tell('import.and', { one, other });
}
