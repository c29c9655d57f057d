import ts from 'typescript';
import { faultAt, faultOf, nodesOf, type Fault, type Rule, type Source } from './source.ts';

const PRODUCT = /^(shared-core|electron|renderer)\//;

/** What would lead out of the page or let a stranger's code in, by name, wherever the name stands. */
const NEVER: Readonly<Record<string, string>> = {
  openExternal: 'nothing is opened outside by an address: an address may be a stranger’s, and the system runs what it names',
  executeJavaScript: 'the main program never runs code in the page: add an operation or a push to the contract',
  executeJavaScriptInIsolatedWorld: 'the main program never runs code in the page: add an operation or a push to the contract',
  enableBlinkFeatures: 'no feature of the engine is switched on that is not on by itself',
  allowpopups: 'the page opens no window',
  webview: 'no page within the page: a webview is a browser without our guards',
  'disable-web-security': 'the page keeps to its own origin',
  'no-sandbox': 'the page stays in its sandbox',
};

/** Settings of a window's page, each with the one value that it may have. */
const SETTINGS: ReadonlyMap<string, ts.SyntaxKind> = new Map([
  ...['sandbox', 'contextIsolation', 'webSecurity'].map((name) => [name, ts.SyntaxKind.TrueKeyword] as const),
  ...['nodeIntegration', 'nodeIntegrationInWorker', 'nodeIntegrationInSubFrames', 'allowRunningInsecureContent', 'experimentalFeatures', 'webviewTag', 'navigateOnDragDrop'].map((name) => [name, ts.SyntaxKind.FalseKeyword] as const),
]);

/** Ways round the guards of the window stand nowhere in the program. Source: Electron's security checklist, items 2 to 4, 6 and 8 to 11, 15 (seen). */
export const shutHatches: Rule = (sources) => sources.filter(({ file }) => PRODUCT.test(file)).flatMap((source) => [...namesIn(source), ...settingsIn(source), ...pageIn(source)]);

function namesIn(source: Source): Fault[] {
  if (source.tree === null) return [];
  return [...nodesOf(source.tree)].filter(isName).flatMap((node) => (Object.hasOwn(NEVER, node.text) && !isAskedAfter(node) ? [faultAt(source, node, NEVER[node.text] ?? '')] : []));
}

function isName(node: ts.Node): node is ts.Identifier | ts.StringLiteralLike {
  return ts.isIdentifier(node) || ts.isStringLiteralLike(node);
}

/** To ask whether a switch was given is no giving of it. */
function isAskedAfter({ parent }: ts.Node): boolean {
  return ts.isCallExpression(parent) && ts.isPropertyAccessExpression(parent.expression) && parent.expression.name.text === 'hasSwitch';
}

function settingsIn(source: Source): Fault[] {
  if (source.tree === null || !source.file.startsWith('electron/')) return [];
  return [...nodesOf(source.tree)].filter(ts.isPropertyAssignment).flatMap((node) => {
    const only = SETTINGS.get(node.name.getText().replace(/['"]/g, ''));
    return only === undefined || node.initializer.kind === only ? [] : [faultAt(source, node, `${node.name.getText()} stays ${only === ts.SyntaxKind.TrueKeyword}, written out`)];
  });
}

/** A page as a file of its own. */
function pageIn(source: Source): Fault[] {
  return source.tree === null && /<webview\b|\ballowpopups\b/i.test(source.text) ? [faultOf(source, '<webview', NEVER['webview'] ?? '')] : [];
}
