import { findHousehold } from '../../../shared-core/fleet/find-car.ts';
import { papers } from '../../../shared-core/records/paper.ts';
import { ok, type Result } from '../../../shared-core/result/result.ts';
import { searchIndex, type SearchIndex } from '../../../shared-core/views/search-index.ts';
import { searchView, type SearchRequest, type SearchView } from '../../../shared-core/views/search-view.ts';
import { countEntries } from '../../store/journal-table.ts';
import type { Store } from '../../store/store.ts';
import type { HostContext } from '../host-context.ts';

interface Held {
  readonly key: string;
  readonly index: SearchIndex;
}

/** What was made ready last, for each open household: it holds until an entry is written, a day goes by or a paper has been read. */
const held = new WeakMap<Store, Held>();

/** Finds what of the household has all that was typed. */
export function searchHousehold(context: HostContext, request: SearchRequest): Result<SearchView> {
  const { facts, folder, store } = context.household();
  const index = store.transaction(() => {
    const look = (id: string) => context.papers.known(folder, id);
    const today = context.world.today();
    const before = held.get(store);
    const read = facts.all(papers).filter(({ id }) => look(id) !== null).length;
    const key = [countEntries(store), today, read].join(' ');
    if (before?.key === key) return ok(before.index);
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const made = searchIndex(facts, household.value, look, today);
    held.set(store, { key, index: made });
    return ok(made);
  }).deferred();
  return index.ok ? ok(searchView(index.value, request)) : index;
}
