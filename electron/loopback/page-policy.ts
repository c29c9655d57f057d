/** Headers on everything that is given out: nothing is kept, guessed, framed, or told to other places. */
export const COMMON_HEADERS: Readonly<Record<string, string>> = {
  'cache-control': 'no-store',
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-resource-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
  'permissions-policy': 'camera=(), display-capture=(), geolocation=(), microphone=(), payment=(), usb=()',
};

/**
 * What the page may load and do: its own files only, no inline script, no eval; style elements only with this load's nonce.
 *
 * Source: Electron's security checklist, item 7 (seen); CSP level 3 for the words.
 */
export function pagePolicy(nonce: string): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
}

/** What is not the page itself may load and do nothing at all. */
export const NOTHING_POLICY = "default-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'";

/** A paper is a stranger's file: shown in a sandbox in which nothing runs. */
export const PAPER_POLICY = `sandbox; ${NOTHING_POLICY}; img-src 'self'; style-src 'unsafe-inline'`;
