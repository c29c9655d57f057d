import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import path from 'node:path';

/** A package that goes out whole: its name, version and folder, told from the project's. */
export interface ShippedPackage {
  readonly name: string;
  readonly version: string;
  readonly folder: string;
}

interface Manifest {
  readonly version: string;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly optionalDependencies?: Readonly<Record<string, string>>;
}

/** Asked for by a package when it is compiled, which none is here, or for a command line of its own. */
const NOT_FOR_RUNNING: Readonly<Record<string, readonly string[]>> = { 'better-sqlite3': ['node-addon-api'], qrcode: ['yargs'] };
/** Electron's own module is in its program. */
const BUILT_IN = new Set(['electron', ...builtinModules]);
const ASKS = [/^(?:import|export)\b.*?\bfrom\s*["']([^"']+)["']/gm, /^import\s*["']([^"']+)["']/gm, /\bimport\(\s*["']([^"']+)["']\s*\)/g, /createRequire\(import\.meta\.url\)(?:\.resolve)?\(\s*["']([^"']+)["']/g];

/** The packages that the bundles in a folder ask for by name. */
export function packagesAskedFor(folder: string): string[] {
  const texts = readdirSync(folder).filter((file) => /\.c?js$/.test(file)).map((file) => readFileSync(path.join(folder, file), 'utf8'));
  const places = texts.flatMap((text) => ASKS.flatMap((ask) => [...text.matchAll(ask)].map((found) => found[1] ?? '')));
  const names = places.filter((place) => !/^(\.|node:)/.test(place)).map((place) => place.split('/').slice(0, place.startsWith('@') ? 2 : 1).join('/'));
  return [...new Set(names)].filter((name) => !BUILT_IN.has(name)).sort();
}

/** Packages with all that they need in turn, by folder. One that the project does not name itself is our own slip. */
export function withTheirNeeds(project: string, names: readonly string[]): ShippedPackage[] {
  const named = manifestOf(project, '').dependencies ?? {};
  const found = new Map<string, ShippedPackage>();
  for (const name of names) {
    if (!Object.hasOwn(named, name)) throw new Error(`The bundle asks for "${name}", which package.json does not name among its dependencies.`);
    take(project, name, '', found);
  }
  return [...found.values()].sort((one, other) => (one.folder < other.folder ? -1 : 1));
}

function take(project: string, name: string, from: string, found: Map<string, ShippedPackage>): void {
  const folder = folderOf(project, name, from);
  if (folder === null) throw new Error(`"${name}", which ${from === '' ? 'the bundle' : from} needs, is not installed.`);
  if (found.has(folder)) return;
  const { version, dependencies = {}, optionalDependencies = {} } = manifestOf(project, folder);
  found.set(folder, { name, version, folder });
  const needs = Object.keys(dependencies).filter((need) => NOT_FOR_RUNNING[name]?.includes(need) !== true && !need.startsWith('@types/') && !Object.hasOwn(optionalDependencies, need));
  for (const need of needs) take(project, need, folder, found);
  // Prebuilt parts for other machines are named as optional, and are not there.
  for (const need of Object.keys(optionalDependencies)) if (folderOf(project, need, folder) !== null) take(project, need, folder, found);
}

/** As Node finds it: in the folder's own node_modules, then in those further up. */
function folderOf(project: string, name: string, from: string): string | null {
  const own = path.join(from, 'node_modules', name);
  if (existsSync(path.join(project, own, 'package.json'))) return own;
  return from === '' ? null : folderOf(project, name, path.dirname(from) === '.' ? '' : path.dirname(from));
}

function manifestOf(project: string, folder: string): Manifest {
  return JSON.parse(readFileSync(path.join(project, folder, 'package.json'), 'utf8')) as Manifest;
}
