import { importsOf, type Import } from './imports.ts';
import { faultAt, type Fault, type Rule } from './source.ts';

/** No file reaches itself through its imports, imports of types included. */
export const noCycle: Rule = (sources) => {
  const imports = new Map(sources.map((source) => [source.file, importsOf(source).filter((one) => one.ours)]));
  const state = new Map<string, 'open' | 'done'>();
  const faults: Fault[] = [];
  const visit = (file: string, path: readonly string[]): void => {
    state.set(file, 'open');
    for (const one of imports.get(file) ?? []) {
      if (state.get(one.target) === 'open') faults.push(cycleFault(one, [...path, file]));
      else if (!state.has(one.target) && imports.has(one.target)) visit(one.target, [...path, file]);
    }
    state.set(file, 'done');
  };
  for (const file of imports.keys()) if (!state.has(file)) visit(file, []);
  return faults;
};

function cycleFault(closing: Import, path: readonly string[]): Fault {
  const round = [...path.slice(path.indexOf(closing.target)), closing.target].join(' -> ');
  return faultAt(closing.from, closing.node, `a round of imports (${round}): move what both need into a file of its own`);
}
