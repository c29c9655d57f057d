import { setLedgerSettings } from './set-ledger-settings.ts';
import { removeYearlyFuel, setYearlyFuel } from './set-yearly-fuel.ts';

/** What can be asked of the ledger by name. */
export const ledgerOperations = {
  'fuel.set': setYearlyFuel,
  'fuel.remove': removeYearlyFuel,
  'ledger-settings.set': setLedgerSettings,
} as const;
