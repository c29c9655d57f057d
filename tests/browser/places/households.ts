import { mustAsk } from '../ask-host.ts';
import { openSamplePage } from '../sample-page.ts';
import { openServedPage, startHousehold, type ServedPage } from '../served-page.ts';
import { EMPTY_PLACES } from './empty-places.ts';
import { addManyCars, MANY_CARS_PLACES } from './many-cars.ts';
import type { Place } from './place.ts';
import { samplePlaces } from './sample-places.ts';

type Opened = Pick<ServedPage, 'page' | 'complaints' | 'close'>;

/** A household open in a page, and all that the page can show of it. */
export interface PlacesOf extends Opened {
  readonly places: readonly Place[];
}

/** The households in which everything is looked at, by name. */
export const HOUSEHOLDS = {
  /** No household yet: the first start. */
  none: async (): Promise<PlacesOf> => ({ ...(await openServedPage()), places: [{ name: 'first-start', address: '/' }] }),
  empty: async (): Promise<PlacesOf> => ({ ...(await started()), places: EMPTY_PLACES }),
  sample: async (): Promise<PlacesOf> => {
    const sample = await openSamplePage();
    return { ...sample, places: await samplePlaces(sample) };
  },
  many: async (): Promise<PlacesOf> => {
    const served = await started();
    await addManyCars((name, request) => mustAsk(served.page, name, request));
    return { ...served, places: MANY_CARS_PLACES };
  },
} as const;

async function started(): Promise<ServedPage> {
  const served = await openServedPage();
  await startHousehold(served.page);
  return served;
}
