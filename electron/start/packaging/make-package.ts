import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Configuration } from 'electron-builder';
import { drawIcons } from './draw-icons.ts';
import { packageConfig } from './package-config.ts';
import { packagesAskedFor, withTheirNeeds } from './shipped-packages.ts';
import { stagePackage } from './stage-package.ts';
import { writeLicences } from './write-licences.ts';

export interface PackageOrder {
  readonly project: string;
  /** The folder of the bundles: main, preload, renderer. */
  readonly built: string;
  /** A folder for the staged program and the packages. */
  readonly out: string;
  /** Electron's program; fetched where none is named. */
  readonly electronDist: string | null;
  /** Kinds of package in place of those of the settings: `dir`, `tar.gz`, `AppImage`, `deb`, `dmg`, `nsis`. */
  readonly kinds: readonly string[];
}

const SECTIONS = { linux: 'linux', darwin: 'mac', win32: 'win' } as const;

/** Packages what is built, for the machine that this runs on. Answers the files and folders made. */
export async function makePackage({ project, built, out, electronDist, kinds }: PackageOrder): Promise<string[]> {
  const section = SECTIONS[process.platform as keyof typeof SECTIONS];
  if (section === undefined) throw new Error(`There are no settings to package for ${process.platform}.`);
  const [app, icons] = [path.join(out, 'app'), path.join(out, 'icons')];
  stagePackage(project, built, app, withTheirNeeds(project, packagesAskedFor(path.join(built, 'main'))), process);
  await writeLicences(project, path.join(built, 'main'), path.join(out, 'licences.txt'));
  await drawIcons(path.join(project, 'renderer', 'app', 'icon.svg'), icons);
  const config = packageConfig({ app, icons, electronDist, out: path.join(out, 'made'), electronVersion: electronVersion(project) });
  const { build } = await import('electron-builder');
  return build({ projectDir: project, config: kinds.length === 0 ? config : ofKinds(config, section, kinds), publish: 'never' });
}

function ofKinds(config: Configuration, section: 'linux' | 'mac' | 'win', kinds: readonly string[]): Configuration {
  return { ...config, [section]: { ...config[section], target: [...kinds] } };
}

function electronVersion(project: string): string {
  return (JSON.parse(readFileSync(path.join(project, 'node_modules', 'electron', 'package.json'), 'utf8')) as { version: string }).version;
}
