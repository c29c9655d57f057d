import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { Host } from '../../shared-core/contract/host.ts';
import type { Push } from '../../shared-core/contract/push.ts';
import type { Moment } from '../../shared-core/journal/operation.ts';
import type { Result } from '../../shared-core/result/result.ts';
import type { PaperDesk } from '../papers/paper-desk.ts';
import type { RowMaking } from '../store/journal-table.ts';
import type { HouseholdFolder } from './household-folder.ts';

/** What the world outside gives the host: the date, the time, chance. Tests give their own. */
export interface World {
  readonly today: () => LocalDate;
  /** The present instant in UTC as the journal writes it. */
  readonly now: () => string;
  readonly newId: () => string;
  readonly making: RowMaking;
}

/** What a served operation works with. The household can change under it: the sample is opened and left. */
export interface HostContext {
  readonly world: World;
  household(): HouseholdFolder;
  /** The household's own folder, whether or not the sample is open. */
  readonly home: string;
  isSample(): boolean;
  /** Closes the open household and opens another folder; where that cannot be opened, the present one stays open. */
  swap(folder: string): Result<null>;
  /** The open database has failed: it is opened anew, and so checked, before it is used again. */
  distrust(): void;
  /** Another host, over a folder of its own. */
  compose(folder: string, world: World): Result<Host & { readonly context: HostContext }>;
  push(push: Push): void;
  /** Where papers are looked into. */
  readonly papers: PaperDesk;
}

/** The moment that an operation is given. */
export function momentOf(world: World): Moment {
  return { today: world.today(), now: world.now(), newId: world.newId };
}
