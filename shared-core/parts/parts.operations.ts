import { setLot, setOffer, setPart, setSpecification, setSupplier } from './set-parts.ts';

/** What can be asked of the parts by name. */
export const partsOperations = {
  'specification.set': setSpecification,
  'part.set': setPart,
  'supplier.set': setSupplier,
  'offer.set': setOffer,
  'lot.set': setLot,
} as const;
