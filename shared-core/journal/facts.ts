import type { Family } from './family.ts';

/** When a fact was written down: by its first entry, and by the one that stands now. */
export interface Stamp {
  readonly seq: number;
  readonly at: string;
  readonly firstSeq: number;
  readonly firstAt: string;
}

/** What stands now, to be read by everything that decides or answers. Lists come in order of id. */
export interface Facts {
  get<Value>(family: Family<Value>, id: string): Value | null;
  ofCar<Value>(family: Family<Value>, car: string): readonly Value[];
  all<Value>(family: Family<Value>): readonly Value[];
  stamps(family: Family<unknown>, car: string | null): ReadonlyMap<string, Stamp>;
}
