import ts from 'typescript';
import { importsOf } from './imports.ts';
import { faultAt, nodesOf, type Fault, type Rule, type Source } from './source.ts';

const SQL =
  /^\s*(--[^\n]*\n\s*)*(SELECT\s|INSERT\s+(OR\s+\w+\s+)?INTO\s|REPLACE\s+INTO\s|UPDATE\s+\w+\s+SET\s|DELETE\s+FROM\s|CREATE\s+(UNIQUE\s+|TEMP\s+)?(TABLE|INDEX|VIEW|TRIGGER)\s|ALTER\s+TABLE\s|DROP\s+(TABLE|INDEX|VIEW|TRIGGER)\s|PRAGMA\s|VACUUM\b|ATTACH\s|WITH\s+\w+\s*(\([^)]*\)\s*)?AS\s*\()/;
const STORE = /^(electron\/store|migrations|tests)\//;

/** Some doors have one keeper: a package, or a name of it, that only one file or folder may import. */
const DOORS = [
  { package: 'electron', name: 'ipcMain', keeper: /^electron\/host\/serve-contract\.ts$/, remedy: 'only electron/host/serve-contract.ts listens to the page: add an operation to the contract' },
  { package: 'electron', name: 'ipcRenderer', keeper: /^electron\/preload\.ts$/, remedy: 'only electron/preload.ts speaks for the page: add an operation to the contract' },
  { package: 'better-sqlite3', name: null, keeper: STORE, remedy: 'only electron/store opens the database: add a function there' },
  { package: 'highs', name: null, keeper: /^(electron\/solver|tests)\//, remedy: 'only electron/solver knows the solver: pass it in behind integer-program' },
] as const;

/** ipcMain, the database and the solver are each reached through one place. */
export const oneDoor: Rule = (sources) => sources.flatMap((source) => importsOf(source).flatMap((one) => doorFaults(source, one)));

function doorFaults(source: Source, one: ReturnType<typeof importsOf>[number]): Fault[] {
  // A stand-in for electron in a test gives these names; it does not take them.
  if (one.typeOnly) return [];
  return DOORS.filter((door) => door.package === one.target && !door.keeper.test(source.file))
    .filter((door) => door.name === null || one.names.includes(door.name) || one.names.includes('*') || one.names.includes('default'))
    .map((door) => faultAt(source, one.node, door.remedy));
}

/** SQL is written in electron/store and in migrations, nowhere else. */
export const sqlInStore: Rule = (sources) => sources.filter(({ file }) => !STORE.test(file)).flatMap(sqlFaults);

function sqlFaults(source: Source): Fault[] {
  if (source.tree === null) return [];
  return [...nodesOf(source.tree)]
    .filter((node) => (ts.isStringLiteralLike(node) || ts.isTemplateExpression(node)) && SQL.test(node.getText().slice(1)))
    .map((node) => faultAt(source, node, 'SQL stands only in electron/store: add a function there for its table group'));
}
