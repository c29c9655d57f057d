/** A screen's sign in the rail. */
export type Sign = 'yard' | 'car' | 'sessions' | 'parts' | 'papers' | 'handover' | 'ledger' | 'settings';

const LINES: Readonly<Record<Sign, string>> = {
  // Three lanes with a mark in each, and today.
  yard: 'M3 6 H21 M3 12 H21 M3 18 H21 M9 3 V21',
  // A car from the side.
  car: 'M2.5 16.5 V13 L6 12 L9 7.5 H15.5 L18.5 12 L21.5 13 V16.5 H19 M14.6 16.5 H9.4 M5 16.5 H2.5 M12.5 7.5 V12 M6 12 H18.5',
  // Two hollow posts on a band.
  sessions: 'M3 19 H21 M6 19 V6.5 A1.5 1.5 0 0 1 9 6.5 V19 M14 19 V10.5 A1.5 1.5 0 0 1 17 10.5 V19',
  // A box on a shelf.
  parts: 'M3 20 H21 M5 20 V9 L12 5.5 L19 9 V20 M5 9 L12 12.5 L19 9 M12 12.5 V20',
  // A sheet with its corner turned down, and another behind it.
  papers: 'M8 3.5 H15.5 L19.5 7.5 V17 H8 Z M15.5 3.5 V7.5 H19.5 M4.5 7 V20.5 H16 M10.5 10.5 H17 M10.5 13.5 H15',
  // A key over an open hand.
  handover: 'M3 17 C7 15.5 9 15.5 12 17 H16 M3 20.5 H14 L21 15.5 M13.5 7 H21 M18 7 V10 M21 7 V9.5',
  // A bound book, ruled, with its column of sums.
  ledger: 'M5 3.5 H19 V20.5 H5 Z M15 3.5 V20.5 M7.5 8 H12.5 M7.5 12 H12.5 M7.5 16 H12.5 M17 8 H17.01 M17 12 H17.01 M17 16 H17.01',
  // Three set screws.
  settings: 'M3 6 H21 M3 12 H21 M3 18 H21',
};

/** Draws a screen's sign; the name beside it says what it is. */
export function ScreenSign({ sign }: { readonly sign: Sign }) {
  return (
    <svg width="24" height="24" viewBox="0 0 24 24" fill="none" stroke="currentColor" strokeWidth="1.75" strokeLinecap="round" strokeLinejoin="round" aria-hidden="true">
      <path d={LINES[sign]} opacity={sign === 'yard' || sign === 'settings' ? 0.55 : 1} />
      {sign === 'yard' && <path d="M12 6 H18 M11 12 H15 M14 18 H20" strokeWidth="3.5" />}
      {sign === 'car' && <><circle cx="7.2" cy="16.8" r="2.1" /><circle cx="16.8" cy="16.8" r="2.1" /></>}
      {sign === 'handover' && <circle cx="10.5" cy="7" r="3" />}
      {sign === 'settings' && <g fill="currentColor"><circle cx="8" cy="6" r="2.2" /><circle cx="16" cy="12" r="2.2" /><circle cx="10" cy="18" r="2.2" /></g>}
    </svg>
  );
}
