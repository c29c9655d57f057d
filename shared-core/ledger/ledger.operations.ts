import { letGoWish, removeWish, wantWishAgain } from './let-go-wish.ts';
import { planWish, unplanWish } from './plan-wish.ts';
import { rankWishes } from './rank-wishes.ts';
import { removeHeldQuote, setHeldQuote } from './set-held-quote.ts';
import { setLedgerSettings } from './set-ledger-settings.ts';
import { setWish } from './set-wish.ts';
import { removeYearlyFuel, setYearlyFuel } from './set-yearly-fuel.ts';

/** What can be asked of the ledger by name. */
export const ledgerOperations = {
  'fuel.set': setYearlyFuel,
  'fuel.remove': removeYearlyFuel,
  'quote.set': setHeldQuote,
  'quote.remove': removeHeldQuote,
  'ledger-settings.set': setLedgerSettings,
  'wish.set': setWish,
  'wish.rank': rankWishes,
  'wish.let-go': letGoWish,
  'wish.want-again': wantWishAgain,
  'wish.plan': planWish,
  'wish.unplan': unplanWish,
  'wish.remove': removeWish,
} as const;
