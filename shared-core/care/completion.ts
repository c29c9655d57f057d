import type { LocalDate } from '../calendar/local-date.ts';
import type { Metres } from '../units/distance.ts';

/** A service item done once: the date, and the car's whole distance then, estimated where nobody read it. */
export interface Completion {
  readonly date: LocalDate;
  readonly metres: Metres | null;
  readonly estimated: boolean;
}
