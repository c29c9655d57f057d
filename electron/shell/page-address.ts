/** The scheme of the window's page and papers; no other address is ever loaded. */
export const PAGE_SCHEME = 'trunnion';
export const PAGE_HOST = 'app';
export const PAGE_ADDRESS = `${PAGE_SCHEME}://${PAGE_HOST}/`;

/**
 * Whether an address is our own page's, by its parts as a parser sees them, never by how its text begins.
 *
 * @example isOwnPage('trunnion://app/car/pip') //=> true
 * @example isOwnPage('https://evil.example/?trunnion://app/') //=> false
 */
export function isOwnPage(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const { protocol, host, username, password } = new URL(address);
  return protocol === `${PAGE_SCHEME}:` && host === PAGE_HOST && username === '' && password === '';
}

/**
 * Whether an address is of a file that our own page made in its memory: what stands within it is read by a parser as well.
 *
 * @example isOwnBlob('blob:trunnion://app/0b9e') //=> true
 */
export function isOwnBlob(address: string): boolean {
  return URL.canParse(address) && new URL(address).protocol === 'blob:' && isOwnPage(new URL(address).pathname);
}
