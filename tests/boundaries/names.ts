import plan from './plan.json' with { type: 'json' };
import { faultOf, type Fault, type Rule, type Source } from './source.ts';

const JUNK = /(^|[-./])(utils?|helpers?|common|misc|managers?)([-./]|$)/;
const KEBAB = /^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9-]+)*$/;
const MIGRATION = /^\d{3}0_[a-z0-9]+(_[a-z0-9]+)*\.sql$|^[a-z-]+\.(json|sql)$/;

/** Files are named by the domain's words, in kebab-case; a drawer for anything has no name here. */
export const fileNames: Rule = (sources) => sources.flatMap(nameFaults);

function nameFaults(source: Source): Fault[] {
  const [area = '', ...rest] = source.file.split('/');
  const name = rest.at(-1);
  if (name === undefined || !plan.top.includes(area)) return [];
  if (JUNK.test(source.file)) return [faultOf(source, source.file, 'name it by the noun and verb of what it does, not by a drawer')];
  if (area === 'migrations') return MIGRATION.test(name) ? [] : [faultOf(source, source.file, 'migrations are named 0010_what_it_does.sql, in steps of 10')];
  return KEBAB.test(name) ? [] : [faultOf(source, source.file, 'file names are kebab-case: forecast-due-window.ts')];
}

/** No folder outside the plan of the house. */
export const folders: Rule = (sources) => sources.flatMap(folderFaults);

const PLACES: Readonly<Record<string, readonly string[] | undefined>> = {
  'shared-core': plan.stages,
  electron: plan.electron,
  renderer: plan.renderer,
  // Tests mirror the core path for path; those of electron may stand by its folder's name alone.
  tests: [...plan.tests, ...plan.electron],
  migrations: [],
};

function folderFaults(source: Source): Fault[] {
  const [area = '', place, ...rest] = source.file.split('/');
  if (place === undefined) return [];
  if (!plan.top.includes(area)) return [faultOf(source, source.file, `the top folders are ${plan.top.join(', ')}: move it into one of them`)];
  const places = PLACES[area];
  if (rest.length === 0 || places === undefined || places.includes(place)) return [];
  return [faultOf(source, source.file, `${area} has the folders ${places.join(', ') || '(none)'}: move it into one of them, or change the plan first`)];
}
