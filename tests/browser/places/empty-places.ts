import type { Place } from './place.ts';

/** Every screen of a household in which nothing is yet. */
export const EMPTY_PLACES: readonly Place[] = [
  { name: 'empty-yard', address: '/' },
  { name: 'empty-car', address: '/car' },
  { name: 'empty-sessions', address: '/sessions' },
  { name: 'empty-parts', address: '/parts' },
  { name: 'empty-parts-order', address: '/parts/order' },
  { name: 'empty-parts-placed', address: '/parts/placed' },
  { name: 'empty-parts-shelf', address: '/parts/shelf' },
  { name: 'empty-parts-tools', address: '/parts/tools' },
  { name: 'empty-parts-offers', address: '/parts/offers' },
  { name: 'empty-papers', address: '/papers' },
  { name: 'empty-handover', address: '/handover' },
  { name: 'empty-handover-leave', address: '/handover/leave' },
  { name: 'empty-ledger', address: '/ledger' },
  { name: 'empty-ledger-ahead', address: '/ledger/ahead' },
  { name: 'empty-ledger-quotes', address: '/ledger/quotes' },
  { name: 'empty-ledger-wishes', address: '/ledger/wishes' },
  { name: 'empty-planning', address: '/settings/planning' },
];
