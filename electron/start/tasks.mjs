import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder. */
export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..');

const VITEST = ['node_modules/vitest/vitest.mjs', 'run', '-c', 'tests/vitest.config.ts'];
const AREAS = ['shared-core', 'electron', 'renderer', 'tests'];

const tests = (name, ...folders) => [{ name, args: [...VITEST, ...folders] }];
const script = (name, file) => [{ name, args: [path.join(root, file)] }];

const typecheck = AREAS.map((area) => ({ name: `types of ${area}`, args: ['node_modules/typescript/bin/tsc', '-p', area] }));
const lint = [
  { name: 'lint', args: ['node_modules/eslint/bin/eslint.js', '-c', 'tests/eslint.config.js', '--max-warnings=0', 'electron', 'renderer', 'shared-core', 'tests'] },
];
const build = script('build', 'electron/start/build.ts');
const boundaries = tests('boundaries', 'tests/boundaries');
const test = tests('tests');

/**
 * Each task: the steps that the pinned Node runs in turn, in the project's folder or, for the commands, in the
 * person's own, so that file names mean what they say. What a person adds goes to the last step.
 */
const tasks = {
  start: script('start', 'electron/start/start.ts'),
  trunnion: [{ ...script('trunnion', 'electron/cli/trunnion.ts')[0], whereThePersonStands: true }],
  build,
  licences: script('licences', 'electron/start/packaging/licences.ts'),
  package: [...build, ...script('package', 'electron/start/packaging/package.ts')],
  rehearse: [{ name: 'rehearsal', args: ['node_modules/vitest/vitest.mjs', 'run', '-c', 'tests/start/rehearsal.config.ts'] }],
  typecheck,
  lint,
  'lint:fix': lint.map((step) => ({ ...step, args: [...step.args, '--fix'] })),
  boundaries,
  test,
  'test:core': tests('core', 'tests/shared-core', 'tests/properties', 'tests/reference'),
  'test:store': tests('store', 'tests/store', 'tests/migrations', 'tests/papers'),
  'test:shell': tests('shell', 'tests/shell', 'tests/loopback', 'tests/start'),
  'test:browser': tests('browser', 'tests/browser'),
  // Every end-to-end spec through either shell; TRUNNION_SHELL=electron takes them through the true window, where its program is to be had.
  'test:shells': ['loopback', 'rehearsal'].map((shell) => ({ ...tests(`browser, ${shell}`, '--project', 'all', 'tests/browser')[0], env: { TRUNNION_SHELL: shell } })),
  bench: [...script('bench', 'tests/bench/answer-times.ts'), ...script('bench of orders', 'tests/bench/order-times.ts'), ...script('bench of plans', 'tests/bench/plan-times.ts'), ...script('bench of searches', 'tests/bench/search-times.ts'), ...script('bench of papers', 'tests/bench/paper-times.ts'), ...script('bench of the screens', 'tests/bench/screen-times.ts')],
  pictures: script('pictures', 'tests/browser/pictures/take-pictures.ts'),
  'pictures:readme': script('pictures of the README', 'tests/browser/pictures/readme-pictures.ts'),
  storm: [
    { ...tests('storm of readings', 'tests/shared-core/fleet/reading-injection.test.ts')[0], env: { STORM_INJECTIONS: '20' } },
    { ...tests('storm of calls', 'tests/loopback/hostile-calls.test.ts', 'tests/shell/hostile-calls.test.ts')[0], env: { STORM_CALLS: '10000' } },
    { ...tests('storm of kills', 'tests/store/killed.test.ts')[0], env: { STORM_KILLS: '200' } },
    { ...tests('storm of plans', 'tests/shared-core/sessions/plan-storm.test.ts')[0], env: { STORM_HOUSEHOLDS: '500' } },
    { ...tests('storm of bare plans', 'tests/shared-core/sessions/plan-brute-force.test.ts', 'tests/shared-core/sessions/plan-second-solver.test.ts')[0], env: { STORM_SMALL_PLANS: '2000', STORM_PLANS: '200' } },
    { ...tests('storm of orders', 'tests/shared-core/parts/order-brute-force.test.ts', 'tests/shared-core/parts/order-second-solver.test.ts', 'tests/shared-core/parts/order-households.test.ts')[0], env: { STORM_ORDERS: '2000', STORM_MIDDLE_ORDERS: '200', STORM_ORDER_HOUSEHOLDS: '50' } },
    { ...tests('storm of budgets', 'tests/shared-core/ledger/budget-coverage.test.ts')[0], env: { STORM_BUDGETS: '200' } },
    { ...tests('storm of packs', 'tests/pack/pack-faults.test.ts')[0], env: { STORM_PACK_FAULTS: '500', STORM_PACKS: '50' } },
    { ...tests('storm of lives', 'tests/properties/state-is-a-replay.test.ts')[0], env: { STORM_LIVES: '200' } },
  ],
  check: [...typecheck, ...lint, ...boundaries, ...test, ...build],
};

export const taskNames = Object.keys(tasks);

/** The steps of a task with a person's own arguments; null for a name that is no task. */
export function stepsOf(task, given) {
  if (!Object.hasOwn(tasks, task ?? '')) return null;
  const steps = tasks[task];
  return steps.map((step, at) => (at === steps.length - 1 ? { ...step, args: [...step.args, ...given] } : step));
}
