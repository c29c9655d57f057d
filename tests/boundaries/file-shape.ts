import ts from 'typescript';
import { faultAt, faultOf, nodesOf, type Fault, type Rule, type Source } from './source.ts';

const MOST_LINES = 400;
const MOST_ELEMENTS = 80;
const PRODUCT = /^(shared-core|electron|renderer)\//;
const DATA = /\.(ya?ml|toml|csv|tsv|ini|xml|json5|txt)$/i;

/** A code file holds one idea: never over 400 lines. */
export const fileSize: Rule = (sources) =>
  sources
    .filter(({ tree }) => tree !== null)
    .filter(({ text }) => linesOf(text) > MOST_LINES)
    .map((source) => faultOf(source, `${linesOf(source.text)} lines`, `no code file is over ${MOST_LINES} lines: give its second idea a file of its own`));

/** Data stands in JSON, beside the code that reads it: no other format, and no long table inside code. */
export const dataIsJson: Rule = (sources) => sources.filter(({ file }) => PRODUCT.test(file)).flatMap((source) => [...otherFormats(source), ...longTables(source)]);

function otherFormats(source: Source): Fault[] {
  return DATA.test(source.file) ? [faultOf(source, source.file, 'data files are JSON: write it as .json')] : [];
}

function longTables(source: Source): Fault[] {
  if (source.tree === null) return [];
  return [...nodesOf(source.tree)]
    .filter((node) => ts.isArrayLiteralExpression(node) && node.elements.length > MOST_ELEMENTS)
    .map((node) => faultAt(source, node, `a table of more than ${MOST_ELEMENTS} rows is data: move it to a .json file beside this one`));
}

/** Import the file itself: nothing only hands on what others export. */
export const noBarrel: Rule = (sources) => sources.filter(({ file }) => PRODUCT.test(file)).flatMap(barrelFaults);

function barrelFaults(source: Source): Fault[] {
  const remedy = 'no barrels: import the file that has what you need';
  if (/\/index\.(ts|tsx|js|mjs)$/.test(source.file)) return [faultOf(source, source.file, remedy)];
  const statements = source.tree?.statements ?? [];
  const passedOn = statements.filter((s) => ts.isExportDeclaration(s) && s.moduleSpecifier !== undefined);
  const nothingElse = statements.every((s) => ts.isImportDeclaration(s) || ts.isExportDeclaration(s));
  return passedOn.filter((s) => nothingElse || (ts.isExportDeclaration(s) && s.exportClause === undefined)).map((s) => faultAt(source, s, remedy));
}

function linesOf(text: string): number {
  return text.split('\n').length - (text.endsWith('\n') ? 1 : 0);
}
