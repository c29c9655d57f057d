import path from 'node:path';
import type { Licence } from './licence.ts';
import { asStated, licenceOfFolder, licencesWithin } from './own-licence.ts';
import type { ShippedPackage } from './shipped-packages.ts';

const NOTE = 'licences.json';

/** What is bundled into the page: code as Vite reads it while it bundles, and fonts by the packages that their files come from. Nothing is written. */
export async function licencesOfPage(project: string): Promise<Licence[]> {
  const { build } = await import('vite');
  const root = path.join(project, 'renderer');
  const built = await build({ configFile: path.join(root, 'vite.config.ts'), logLevel: 'error', build: { write: false, license: { fileName: NOTE } } });
  const output = (Array.isArray(built) ? built : [built]).flatMap((one) => ('output' in one ? one.output : []));
  const assets = output.filter((file) => file.type === 'asset');
  const note = assets.find((file) => file.fileName === NOTE);
  if (note === undefined) throw new Error('Vite wrote no list of licences.');
  const found = JSON.parse(String(note.source)) as { name: string; version: string; identifier?: string; text?: string }[];
  const code = found.map(({ name, version, identifier, text }) => asStated(name, version, identifier, text === undefined ? [] : [text]));
  const files = assets.flatMap(({ originalFileNames }) => originalFileNames).flatMap((file) => packageFolder(path.resolve(root, file)) ?? []);
  return [...code, ...[...new Set(files)].map(licenceOfFolder)];
}

function packageFolder(file: string): string | null {
  return /^(.*\/node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(file.split(path.sep).join('/'))?.[1] ?? null;
}

/** The licences of all that goes out, each once, by name: packages that go out whole with what is built into them, and what the page holds. */
export function gatherLicences(project: string, packages: readonly ShippedPackage[], page: readonly Licence[]): Licence[] {
  const whole = packages.flatMap(({ folder }) => {
    const own = licenceOfFolder(path.join(project, folder));
    return [own, ...licencesWithin(path.join(project, folder), own)];
  });
  const found = new Map([...page, ...whole].map((one) => [keyOf(one), one]));
  return [...found.entries()].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, licence]) => licence);
}

const keyOf = ({ within, name, version }: Licence): string => (within === undefined ? `${name}@${version ?? ''}` : `${within}~${name}`);

const RULE = '-'.repeat(80);

/** The licences as one text. The same packages give the same bytes. */
export function licencesText(licences: readonly Licence[]): string {
  const head = `Trunnion holds the parts named below, each under its own licence.\nElectron and Chromium have theirs beside the program: LICENSE.electron.txt and LICENSES.chromium.html.\n`;
  const list = licences.map((one) => `  ${titleOf(one)}: ${one.licence}`).join('\n');
  const each = licences.map((one) => [RULE, titleOf(one), `Licence: ${one.licence}`, '', one.texts.map((text) => text.replaceAll('\r\n', '\n')).join('\n\n')].join('\n'));
  return `${head}\n${list}\n\n${each.join('\n\n')}\n`;
}

function titleOf({ name, version, within }: Licence): string {
  return `${name}${version === null ? '' : ` ${version}`}${within === undefined ? '' : ` (within ${within})`}`;
}
