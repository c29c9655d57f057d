import path from 'node:path';
import ts from 'typescript';
import { nodesOf, type Source } from './source.ts';

/** One import of a file, static, dynamic or in a type; `target` is a path from the top for our own files, else the package. */
export interface Import {
  readonly from: Source;
  readonly node: ts.Node;
  readonly target: string;
  readonly ours: boolean;
  readonly typeOnly: boolean;
  readonly names: readonly string[];
}

/** All imports of a file, in the order of its text. */
export function importsOf(source: Source): Import[] {
  if (source.tree === null) return [];
  const found: Import[] = [];
  for (const node of nodesOf(source.tree)) {
    const specifier = specifierOf(node);
    if (specifier !== null) found.push({ from: source, node, ...targetOf(source, specifier), typeOnly: isTypeOnly(node), names: namesOf(node) });
  }
  return found;
}

function specifierOf(node: ts.Node): string | null {
  if ((ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier !== undefined) return textOf(node.moduleSpecifier);
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) return textOf(node.argument.literal);
  if (!ts.isCallExpression(node)) return null;
  const dynamic = node.expression.kind === ts.SyntaxKind.ImportKeyword || node.expression.getText() === 'require';
  return dynamic && node.arguments[0] !== undefined ? textOf(node.arguments[0]) : null;
}

function textOf(node: ts.Node): string | null {
  return ts.isStringLiteralLike(node) ? node.text : null;
}

function targetOf(source: Source, specifier: string): { target: string; ours: boolean } {
  const ours = specifier.startsWith('.');
  return { ours, target: ours ? path.posix.join(path.posix.dirname(source.file), specifier.replace(/[?#].*$/, '')) : specifier };
}

/** An import of types only leaves nothing behind at run time; one written without `type` counts as an import of values. */
function isTypeOnly(node: ts.Node): boolean {
  if (ts.isImportTypeNode(node)) return true;
  if (ts.isExportDeclaration(node)) return node.isTypeOnly;
  if (!ts.isImportDeclaration(node)) return false;
  const clause = node.importClause;
  if (clause === undefined) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const bindings = clause.namedBindings;
  return clause.name === undefined && bindings !== undefined && ts.isNamedImports(bindings) && bindings.elements.every((e) => e.isTypeOnly);
}

function namesOf(node: ts.Node): string[] {
  if (!ts.isImportDeclaration(node)) return [];
  const bindings = node.importClause?.namedBindings;
  const listed = bindings !== undefined && ts.isNamedImports(bindings) ? bindings.elements.map((e) => (e.propertyName ?? e.name).text) : ['*'];
  return node.importClause?.name === undefined ? listed : [...listed, 'default'];
}
