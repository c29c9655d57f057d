import ts from 'typescript';
import { faultAt, nodesOf, type Fault, type Rule, type Source } from './source.ts';

/** Calls that read the clock or draw chance, as they are written. */
const IMPURE_CALLS = /^(globalThis\.)?(Date\.now|Date|Math\.random|performance\.now|Temporal\.Now\.\w+|crypto\.\w+(\.\w+)?)$/;

/** The core has no clock and no chance: the same arguments always give the same answer. */
export const pureCore: Rule = (sources) => sources.filter((s) => s.file.startsWith('shared-core/')).flatMap(impureLines);

function impureLines(source: Source): Fault[] {
  if (source.tree === null) return [];
  const remedy = 'the core has no clock and no chance: take `today`, an id, a salt or a digest as an argument';
  return [...nodesOf(source.tree)].filter(isImpure).map((node) => faultAt(source, node, remedy));
}

function isImpure(node: ts.Node): boolean {
  if (ts.isNewExpression(node)) return node.expression.getText() === 'Date' && (node.arguments ?? []).length === 0;
  if (ts.isCallExpression(node)) return IMPURE_CALLS.test(node.expression.getText());
  // Handed on without a call, it is read all the same: `ids.map(Math.random)`.
  return ts.isPropertyAccessExpression(node) && !isPartOfMore(node) && IMPURE_CALLS.test(node.getText());
}

function isPartOfMore(node: ts.Node): boolean {
  const { parent } = node;
  return ts.isPropertyAccessExpression(parent) || (ts.isCallExpression(parent) && parent.expression === node);
}
