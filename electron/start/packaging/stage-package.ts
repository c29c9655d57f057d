import { cpSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { ABOUT } from './package-config.ts';
import type { ShippedPackage } from './shipped-packages.ts';

/** What a machine's prebuilt parts are called by. */
export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly arch: string;
}

const LICENCE = /^(licen[cs]e|copying|notice)/i;
/** What no package needs at run time: types, headers, maps, manuals, tests. */
const NEVER = /\.(d\.[cm]?ts|ts|h|map|flow|md|markdown|html)$|(^|\/)(tests?|docs?|examples?|\.github)(\/|$)/i;
/** What single packages bring for compiling, for browsers and for other ways of loading. */
const LEFT_OUT: Readonly<Record<string, RegExp>> = {
  '@expo-google-fonts/source-sans-3': /Italic|\.png$/,
  '@hyzyla/pdfium': /base64|browser|cdn|worker/,
  'date-fns': /^fp(\/|$)|cdn/,
  'better-sqlite3': /^(deps|src|binding\.gyp)(\/|$)/,
  fontkit: /^src(\/|$)/,
  pdfkit: /browser|standalone|\.old\./,
  sharp: /^(src|install)(\/|$)/,
  zod: /^src(\/|$)/,
};

/** Whether a file of a package, told from its folder, goes out with it to such a machine. */
export function goesOut(name: string, file: string, { platform, arch }: Machine): boolean {
  if (LICENCE.test(path.posix.basename(file))) return true;
  if (NEVER.test(file) || LEFT_OUT[name]?.test(file) === true) return false;
  return name !== 'better-sqlite3' || !/^prebuilds\/./.test(file) || new RegExp(`^prebuilds/${platform}(musl)?-${arch}\\.node$`).test(file);
}

/** Lays out the program in a folder of its own: its manifest, the bundles, the migrations, and the packages that the bundles ask for, without sources. */
export function stagePackage(project: string, built: string, app: string, packages: readonly ShippedPackage[], machine: Machine): void {
  rmSync(app, { recursive: true, force: true });
  for (const part of ['main', 'preload', 'renderer']) cpSync(path.join(built, part), path.join(app, 'dist', part), { recursive: true });
  cpSync(path.join(project, 'migrations'), path.join(app, 'migrations'), { recursive: true, filter: (file) => statSync(file).isDirectory() || /\d_.*\.sql$/.test(file) });
  for (const one of packages) stageOne(project, app, one, machine);
  writeFileSync(path.join(app, 'package.json'), manifest(project, packages));
}

function stageOne(project: string, app: string, { name, folder }: ShippedPackage, machine: Machine): void {
  const from = path.join(project, folder);
  const filter = (file: string): boolean => {
    const relative = path.relative(from, file).split(path.sep).join('/');
    // What lies in a package's own node_modules goes out by its own name, or not at all.
    return relative !== 'node_modules' && (relative === '' || goesOut(name, relative, machine));
  };
  mkdirSync(path.join(app, path.dirname(folder)), { recursive: true });
  cpSync(from, path.join(app, folder), { recursive: true, filter });
}

/** What the program and the packager read of the manifest; scripts and development are left behind. */
function manifest(project: string, packages: readonly ShippedPackage[]): string {
  const whole = JSON.parse(readFileSync(path.join(project, 'package.json'), 'utf8')) as Record<string, unknown>;
  const kept = ['name', 'version', 'license', 'type', 'main'].filter((key) => whole[key] !== undefined).map((key) => [key, whole[key]] as const);
  const top = packages.filter(({ folder, name }) => folder === path.join('node_modules', name)).map(({ name, version }) => [name, version] as const);
  return `${JSON.stringify({ ...Object.fromEntries(kept), ...ABOUT, dependencies: Object.fromEntries(top) }, null, 2)}\n`;
}
