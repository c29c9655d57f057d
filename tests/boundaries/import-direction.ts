import { importsOf, type Import } from './imports.ts';
import plan from './plan.json' with { type: 'json' };
import { faultAt, type Fault, type Rule } from './source.ts';

const SHARED_BY_SCREENS = new Set(plan.sharedByScreens);
const READS_OF_CORE: Readonly<Record<string, string | undefined>> = plan.rendererReadsOfTheCore;

/** renderer -> shared-core <- electron; a stage imports only stages above it; screens do not import each other. */
export const importDirection: Rule = (sources) => sources.flatMap((source) => importsOf(source).flatMap(faultsOf));

function faultsOf(one: Import): Fault[] {
  const remedy = remedyFor(one);
  return remedy === null ? [] : [faultAt(one.from, one.node, remedy)];
}

function remedyFor(one: Import): string | null {
  const [area = '', place = ''] = one.from.file.split('/');
  if (area === 'shared-core') return one.ours ? remedyInCore(one, place) : remedyForPackage(one);
  if (!one.ours) return area === 'renderer' ? remedyInPage(one) : null;
  if (area === 'renderer') return remedyInRenderer(one, place);
  if (area === 'electron' && /^(renderer|tests)\//.test(one.target)) return 'electron never imports the page or a test: put what both need into shared-core';
  return null;
}

function remedyInCore({ target }: Import, stage: string): string | null {
  const [area, wanted = ''] = target.split('/');
  if (area !== 'shared-core') return 'shared-core imports only itself: take what you need as an argument';
  const [own, other] = [plan.stages.indexOf(stage), plan.stages.indexOf(wanted)];
  if (own < 0 || other < 0) return null;
  return other <= own ? null : `${stage} stands before ${wanted} in the journey: move the code to the later stage, or pass the value in`;
}

function remedyForPackage({ target }: Import): string | null {
  const name = target.split('/').slice(0, target.startsWith('@') ? 2 : 1).join('/');
  if (plan.packagesOfTheCore.includes(name)) return null;
  return `the core uses only ${plan.packagesOfTheCore.join(', ')}: disk, digests, PDF, ZIP and solver come in as arguments`;
}

function remedyInPage({ target }: Import): string | null {
  return /^node:|^electron$|^better-sqlite3$/.test(target) ? 'the page has no Node: ask the host by an operation' : null;
}

function remedyInRenderer({ target, typeOnly }: Import, screen: string): string | null {
  const [area = '', place = ''] = target.split('/');
  if (area === 'electron' || area === 'tests') return 'the page never imports electron or a test: ask by an operation of the contract';
  if (area === 'shared-core') return remedyForReadOfCore(place, typeOnly);
  if (area !== 'renderer' || screen === place || screen === 'app' || !target.includes('/', 'renderer/'.length)) return null;
  return SHARED_BY_SCREENS.has(place) ? null : `screens do not import each other: move what both need to renderer/ui`;
}

function remedyForReadOfCore(stage: string, typeOnly: boolean): string | null {
  const allowed = READS_OF_CORE[stage];
  if (allowed === undefined) return 'the page reads of the core only result, units, calendar, contract and the types of views: add what it needs to a view';
  return allowed === 'types' && !typeOnly ? `the page takes only types from ${stage}: write \`import type\`, and ask the host for the value` : null;
}
