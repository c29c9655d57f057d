import type { SampleStock } from './sample-stock.ts';
import { call, type SampleRequest, type SampleStep } from './sample-step.ts';

/** The household itself, what its cars ask for, who sells it at which prices, and what stands on the shelf. */
export function stockSteps(stock: SampleStock): readonly SampleStep[] {
  const { startedOn } = stock;
  const stated = (operation: 'specification.set' | 'part.set' | 'supplier.set', requests: readonly object[]) =>
    requests.map((request) => call(startedOn, operation, request as SampleRequest));
  return [
    call(startedOn, 'household.start', stock.household),
    ...stated('specification.set', stock.specifications),
    ...stated('part.set', stock.parts),
    ...stated('supplier.set', stock.suppliers),
    ...stock.offers.map((offer) => call(offer.seenOn, 'offer.set', offer as unknown as SampleRequest)),
    ...stock.lots.flatMap(lotSteps),
  ];
}

/** A lot comes closed; opening it is a day of its own. */
function lotSteps(lot: SampleStock['lots'][number]): readonly SampleStep[] {
  const came = call(lot.receivedOn, 'lot.set', { ...(lot as unknown as SampleRequest), openedOn: null });
  return lot.openedOn === null ? [came] : [came, call(lot.openedOn, 'lot.set', lot as unknown as SampleRequest)];
}
