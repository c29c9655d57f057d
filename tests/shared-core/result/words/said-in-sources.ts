import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import { ROOT, sourceOf, type Source } from '../../../boundaries/source.ts';

/** A key that the source names where something is refused or said, and the names of the values it gives; null where they are not written out there. */
export interface SaidInSource {
  readonly key: string;
  readonly given: readonly string[] | null;
  readonly at: string;
}

const core = treesOf('shared-core');
const host = treesOf('electron');
/** A schema's refusal is told with the field at fault, and nothing else. */
const GIVEN_BY_A_SCHEMA = ['field'];

/** Every refusal in the core and the host: calls of `refuse`, of `refusedBy` for a schema, tables of codes, and refusals written as objects. */
export function refusalsInSources(): SaidInSource[] {
  return [...core, ...host].flatMap(({ source, nodes }) => nodes.flatMap((node) => refusalsAt(source, node)));
}

function refusalsAt(source: Source, node: ts.Node): SaidInSource[] {
  if (ts.isCallExpression(node) && node.expression.getText() === 'refuse') return keysIn(node.arguments[0]).map((key) => said(source, node, key, valuesOf(node.arguments[1])));
  if (ts.isCallExpression(node) && node.expression.getText() === 'refusedBy') return keysIn(node.arguments[0]).map((key) => said(source, node, key, GIVEN_BY_A_SCHEMA));
  if (ts.isVariableDeclaration(node) && /^REFUSED_BY/.test(node.name.getText()) && node.initializer !== undefined) return keysIn(node.initializer).map((key) => said(source, node, key, null));
  return saidAsObject(source, node, 'code');
}

/** Every message in the core: objects of a key and its values, and keys said with theirs. */
export function messagesInSources(): SaidInSource[] {
  return core.flatMap(({ source, nodes }) => nodes.flatMap((node) => [...saidAsObject(source, node, 'key'), ...saidByCall(source, node)]));
}

/** The beginnings of keys that are put together: `state-${...}` gives "state-". */
export function keyBeginningsInSources(): string[] {
  const texts = core.flatMap(({ nodes }) => nodes.filter(ts.isTemplateExpression).filter(isKey).map((node) => node.head.text));
  return [...new Set(texts)].sort();
}

const SAYS = /^(tell|say|sayOf|sayKind|sayDate|sayMonth|sayMoment|windowWords|\w*[cC]hoices)$/;

/** Calls that say something as soon as their file is loaded: outside every function. What the start and the threads of the host call `say` is another. */
export function saidWhileLoading(): string[] {
  const renderer = treesOf('renderer');
  return [...core, ...host, ...renderer].filter(({ source }) => !/^electron\/(start|solver)\//.test(source.file)).flatMap(({ source }) => (source.tree === null ? [] : saidOutside(source, source.tree)));
}

function saidOutside(source: Source, node: ts.Node): string[] {
  if (ts.isFunctionLike(node)) return [];
  const here = ts.isCallExpression(node) && SAYS.test(node.expression.getText()) ? [said(source, node, node.expression.getText(), null)].map(({ key, at }) => `${at} ${key}`) : [];
  const within: string[] = [];
  ts.forEachChild(node, (child) => void within.push(...saidOutside(source, child)));
  return [...here, ...within];
}

function isKey(node: ts.TemplateExpression): boolean {
  let parent: ts.Node = node.parent;
  while (ts.isConditionalExpression(parent)) parent = parent.parent;
  return ts.isPropertyAssignment(parent) && parent.name.getText() === 'key' && propertyOf(parent.parent, 'values') !== undefined;
}

function saidByCall(source: Source, node: ts.Node): SaidInSource[] {
  if (!ts.isCallExpression(node) || node.expression.getText() !== 'sayOf') return [];
  return keysIn(node.arguments[0]).map((key) => said(source, node, key, valuesOf(node.arguments[1])));
}

function saidAsObject(source: Source, node: ts.Node, name: 'code' | 'key'): SaidInSource[] {
  if (!ts.isObjectLiteralExpression(node)) return [];
  const values = propertyOf(node, 'values');
  const key = propertyOf(node, name);
  if (values === undefined || key === undefined) return [];
  return keysIn(key).map((one) => said(source, node, one, valuesOf(values)));
}

function propertyOf(node: ts.ObjectLiteralExpression, name: string): ts.Expression | undefined {
  return node.properties.filter(ts.isPropertyAssignment).find((property) => property.name.getText() === name)?.initializer;
}

/** The names of the values given; null where some are handed on from elsewhere. */
function valuesOf(node: ts.Expression | undefined): string[] | null {
  if (node === undefined) return [];
  if (!ts.isObjectLiteralExpression(node)) return null;
  const names = node.properties.map((property) => property.name?.getText() ?? null);
  return names.some((name) => name === null) ? null : names.flatMap((name) => name ?? []);
}

/** Keys written out in an expression: the text itself, both ways of a choice, a fallback, the values of a table. */
function keysIn(node: ts.Node | undefined): string[] {
  if (node === undefined) return [];
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isParenthesizedExpression(node)) return keysIn(node.expression);
  if (ts.isConditionalExpression(node)) return [...keysIn(node.whenTrue), ...keysIn(node.whenFalse)];
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.QuestionQuestionToken) return [...keysIn(node.left), ...keysIn(node.right)];
  if (ts.isObjectLiteralExpression(node)) return node.properties.filter(ts.isPropertyAssignment).flatMap((property) => keysIn(property.initializer));
  return [];
}

function said({ file, tree }: Source, node: ts.Node, key: string, given: readonly string[] | null): SaidInSource {
  const line = tree === null ? 0 : tree.getLineAndCharacterOfPosition(node.getStart(tree)).line + 1;
  return { key, given, at: `${file}:${line}` };
}

function treesOf(folder: string): { readonly source: Source; readonly nodes: readonly ts.Node[] }[] {
  const files = readdirSync(`${ROOT}${folder}`, { recursive: true, encoding: 'utf8' }).filter((file) => /\.tsx?$/.test(file)).map((file) => `${folder}/${file}`);
  return files.flatMap((file) => {
    const source = sourceOf(file, readFileSync(`${ROOT}${file}`, 'utf8'));
    return source.tree === null ? [] : [{ source, nodes: nodesUnder(source.tree) }];
  });
}

function nodesUnder(node: ts.Node): ts.Node[] {
  const all: ts.Node[] = [node];
  ts.forEachChild(node, (child) => void all.push(...nodesUnder(child)));
  return all;
}
