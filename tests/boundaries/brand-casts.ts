import ts from 'typescript';
import { faultAt, nodesOf, type Fault, type Rule, type Source } from './source.ts';

const AT_THE_DOOR = /^shared-core\/(units|calendar)\//;

/** A value becomes a distance, an amount of money or a date only where it is checked: in units and calendar. */
export const brandCasts: Rule = (sources) => {
  const brands = new Set(sources.filter((s) => AT_THE_DOOR.test(s.file)).flatMap(brandsOf));
  return sources.filter((s) => /^(shared-core|electron|renderer)\//.test(s.file) && !AT_THE_DOOR.test(s.file)).flatMap((s) => castsOf(s, brands));
};

/** Names of types that are a number or a text with something added that only a cast can give. */
export function brandsOf(source: Source): string[] {
  if (source.tree === null) return [];
  return source.tree.statements.filter(ts.isTypeAliasDeclaration).filter(isBrand).map((alias) => alias.name.text);
}

function isBrand({ type }: ts.TypeAliasDeclaration): boolean {
  if (ts.isTypeReferenceNode(type)) return /^(Unit|Brand|Branded)$/.test(type.typeName.getText());
  return ts.isIntersectionTypeNode(type) && type.types.some((part) => /^(number|string)$/.test(part.getText()));
}

function castsOf(source: Source, brands: ReadonlySet<string>): Fault[] {
  if (source.tree === null) return [];
  const faults: Fault[] = [];
  for (const node of nodesOf(source.tree)) {
    if (!ts.isAsExpression(node) && !ts.isTypeAssertionExpression(node)) continue;
    const brand = [...nodesOf(node.type)].find((part) => ts.isIdentifier(part) && brands.has(part.text));
    if (brand !== undefined) faults.push(faultAt(source, node.type, `${brand.getText()} is made only in units and calendar: call its constructor there, which checks the value`));
  }
  return faults;
}
