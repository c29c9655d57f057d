import { removeHeldQuote, setHeldQuote } from './set-held-quote.ts';
import { setLedgerSettings } from './set-ledger-settings.ts';
import { removeYearlyFuel, setYearlyFuel } from './set-yearly-fuel.ts';

/** What can be asked of the ledger by name. */
export const ledgerOperations = {
  'fuel.set': setYearlyFuel,
  'fuel.remove': removeYearlyFuel,
  'quote.set': setHeldQuote,
  'quote.remove': removeHeldQuote,
  'ledger-settings.set': setLedgerSettings,
} as const;
