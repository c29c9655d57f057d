/**
 * A path as a manifest writes it: only line feed, carriage return and the percent sign are encoded, nothing else.
 *
 * Source: RFC 8493 section 2.1.3 (seen). @example manifestPath('a%b') //=> 'a%25b'
 */
export function manifestPath(path: string): string {
  return path.replaceAll('%', '%25').replaceAll('\n', '%0A').replaceAll('\r', '%0D');
}

/** The path that a manifest of version 1.0 means; hexadecimal digits in either case. @example pathInManifest('a%25b') //=> 'a%b' */
export function pathInManifest(text: string): string {
  return text.replaceAll(/%(0A|0D|25)/gi, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));
}
