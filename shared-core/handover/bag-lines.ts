import { pathInManifest } from './manifest-path.ts';

/** Lines of a tag file, whichever way they end. Source: RFC 8493 section 2.3 (seen): LF, CR or CRLF. */
export function tagLines(text: string): string[] {
  const lines = text.split(/\r\n|\r|\n/);
  return lines.at(-1) === '' ? lines.slice(0, -1) : lines;
}

/** One line of a manifest that could be read: the digest in small letters, the path it means. */
export interface ManifestLine {
  readonly line: number;
  readonly digest: string;
  readonly path: string;
  /** It has the mark that md5sum-like tools put before binary files. */
  readonly starred: boolean;
}

/** The lines of a manifest, and the numbers (from 1) of those that are none. */
export interface ManifestLines {
  readonly lines: readonly ManifestLine[];
  readonly unreadable: readonly number[];
}

const LINE = /^([0-9A-Fa-f]+)[ \t]+(\*?)(.+)$/;

/**
 * Reads a manifest of version 1.0.
 *
 * Source: RFC 8493 section 2.1.3 and its grammar (seen); the star of md5sum-like tools is noticed, their leading backslash is not read.
 */
export function readManifest(text: string, digestLength: number): ManifestLines {
  const [lines, unreadable]: [ManifestLine[], number[]] = [[], []];
  tagLines(text).forEach((content, at) => {
    const parts = LINE.exec(content);
    const [digest = '', star = '', path = ''] = parts?.slice(1) ?? [];
    if (digest.length !== digestLength) unreadable.push(at + 1);
    else lines.push({ line: at + 1, digest: digest.toLowerCase(), path: pathInManifest(path), starred: star !== '' });
  });
  return { lines, unreadable };
}

/** The values of a label in `bag-info.txt`, in order; labels are alike in either case, folded lines are joined. */
export function infoValues(text: string, label: string): string[] {
  const unfolded = tagLines(text).reduce<string[]>((lines, line) => {
    if (/^[ \t]/.test(line) && lines.length > 0) return [...lines.slice(0, -1), `${lines.at(-1)} ${line.trim()}`];
    return [...lines, line];
  }, []);
  return unfolded.flatMap((line) => {
    const parts = /^([^:]+): (.*)$/.exec(line);
    return parts?.[1]?.toLowerCase() === label.toLowerCase() ? [parts[2] ?? ''] : [];
  });
}
