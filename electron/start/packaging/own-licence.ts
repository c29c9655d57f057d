import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import spdx from 'spdx-license-list/full.js';
import parts from './built-in-parts.json' with { type: 'json' };
import type { Licence } from './licence.ts';
import stated from './stated-licences.json' with { type: 'json' };

const HOLDS_LICENCE = /^(licen[cs]e|copying|notice|ofl)/i;

interface Stated {
  readonly licence: string;
  readonly holder: string | null;
}

/** The licence of a package as it lies in its folder, with every file that tells of it. */
export function licenceOfFolder(folder: string): Licence {
  const { name, version, license } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')) as { name: string; version: string; license?: string };
  const texts = readdirSync(folder).filter((file) => HOLDS_LICENCE.test(file)).sort().map((file) => readFileSync(path.join(folder, file), 'utf8').trim());
  return asStated(name, version, license, texts);
}

/**
 * The licence of a package by what it says of itself. Where it states a licence without its text, or brings a text without stating which, what
 * stands is written down beside this file, and the text is that of the SPDX list.
 */
export function asStated(name: string, version: string, states: string | undefined, texts: readonly string[]): Licence {
  const known = (stated as Readonly<Record<string, Stated>>)[name];
  const licence = states ?? known?.licence ?? 'UNKNOWN';
  const lacks = texts.length === 0 && known?.licence === licence && known.holder !== null;
  return { name, version, licence, texts: lacks ? [`Copyright: ${known.holder}`, standardText(licence)] : texts };
}

/** What is built into a package and has licences of its own, which the package does not all carry: written down beside this file, with the texts of the SPDX list. */
export function licencesWithin(folder: string, { name }: Licence): Licence[] {
  return parts.filter(({ within }) => within === name || (name.startsWith(`${within}-`) && name.startsWith('@img/'))).map((part) => {
    const standard = [...part.licence.split(' AND '), ...(part.also ?? [])].map(standardText);
    const told = part.readme === true ? [readFileSync(path.join(folder, 'README.md'), 'utf8').trim(), versionsIn(folder)] : [];
    return { name: part.name, version: null, licence: part.licence, within: name, texts: [part.notice.join('\n'), ...told, ...standard] };
  });
}

function versionsIn(folder: string): string {
  const versions = JSON.parse(readFileSync(path.join(folder, 'versions.json'), 'utf8')) as Record<string, string>;
  return `Versions: ${Object.entries(versions).map(([name, version]) => `${name} ${version}`).join(', ')}`;
}

/** A licence's own text, with the places for names left open: the notice before it names who has the copyright. */
function standardText(id: string): string {
  const found = spdx[id];
  if (found === undefined) throw new Error(`The SPDX list has no licence "${id}".`);
  return `${found.name} (${id})\n\n${found.licenseText.trim()}`;
}
