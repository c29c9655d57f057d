import type { Page } from 'playwright-core';

interface Node {
  readonly nodeId: string;
  readonly parentId?: string;
  readonly ignored: boolean;
  readonly role?: { readonly value: string };
  readonly name?: { readonly value: string };
}

const ACTING = new Set(['button', 'link', 'checkbox', 'radio', 'textbox', 'combobox', 'spinbutton', 'searchbox', 'slider', 'switch', 'tab', 'menuitem', 'DisclosureTriangle']);
const GROUPING = new Set(['region', 'group', 'row', 'listitem', 'dialog', 'form', 'navigation', 'main', 'complementary', 'radiogroup', 'article', 'RootWebArea']);

/** What the browser tells a screen reader: everything that acts has a name (4.1.2, seen), and of two buttons side by side each its own (our own rule). */
export async function namesWanting(page: Page): Promise<readonly string[]> {
  const session = await page.context().newCDPSession(page);
  const { nodes } = (await session.send('Accessibility.getFullAXTree')) as unknown as { readonly nodes: readonly Node[] };
  await session.detach();
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const acting = nodes.filter((node) => !node.ignored && ACTING.has(node.role?.value ?? ''));
  const nameless = acting.filter(({ name }) => (name?.value ?? '').trim() === '').map((node) => `a ${node.role?.value ?? ''} in ${groupOf(byId, node)?.name?.value ?? 'the page'} has no name`);
  const seen = new Map<string, number>();
  for (const node of acting.filter(({ role }) => role?.value === 'button')) {
    const key = `two buttons "${node.name?.value ?? ''}" stand in one ${groupOf(byId, node)?.role?.value ?? ''} "${groupOf(byId, node)?.name?.value ?? ''}"|${groupOf(byId, node)?.nodeId ?? ''}`;
    seen.set(key, (seen.get(key) ?? 0) + 1);
  }
  return [...nameless, ...[...seen].filter(([, times]) => times > 1).map(([key]) => key.replace(/\|.*$/, ''))];
}

function groupOf(byId: ReadonlyMap<string, Node>, node: Node): Node | undefined {
  const above = byId.get(node.parentId ?? '');
  return above === undefined || (!above.ignored && GROUPING.has(above.role?.value ?? '')) ? above : groupOf(byId, above);
}
