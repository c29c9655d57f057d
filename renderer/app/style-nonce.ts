declare global {
  interface Window {
    /** Where libraries that add style elements of their own look for a nonce. */
    __webpack_nonce__?: string;
  }
}

const nonce = document.querySelector<HTMLMetaElement>('meta[property="csp-nonce"]')?.nonce ?? '';
window.__webpack_nonce__ = nonce;

/** The nonce that this load of the page was served with: style elements without it are refused by the browser. */
export function styleNonce(): string {
  return nonce;
}
