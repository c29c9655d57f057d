import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';

/** The project's folder. */
export const ROOT = new URL('../..', import.meta.url).pathname;

const CODE = /\.(ts|tsx|mts|cts|js|mjs|cjs)$/;

/** A file of the project by its path from the top, with its syntax tree where it is code. */
export interface Source {
  readonly file: string;
  readonly text: string;
  readonly tree: ts.SourceFile | null;
}

/** Something that stands where it must not: the line itself and what to do about it. */
export interface Fault {
  readonly file: string;
  readonly line: number;
  readonly found: string;
  readonly remedy: string;
}

/** One rule of the house over all files of the project. */
export type Rule = (sources: readonly Source[]) => Fault[];

/** A file given as text, for the project's own files and for snippets alike. */
export function sourceOf(file: string, text: string): Source {
  return { file, text, tree: CODE.test(file) ? ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true) : null };
}

/** Every file that is in the project or would be with the next commit. */
export function projectSources(): Source[] {
  const files = (listedByGit() ?? listedByFolder()).filter((file) => file !== '' && existsSync(path.join(ROOT, file)));
  return [...new Set(files)].map((file) => sourceOf(file, readFileSync(path.join(ROOT, file), 'utf8')));
}

function listedByGit(): string[] | null {
  try {
    const args = ['ls-files', '--cached', '--others', '--exclude-standard'];
    return execFileSync('git', args, { cwd: ROOT, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).split('\n');
  } catch {
    return null;
  }
}

/** Where the project came without git: every file but what is installed or built. */
function listedByFolder(): string[] {
  const all = readdirSync(ROOT, { recursive: true, withFileTypes: true, encoding: 'utf8' }).filter((entry) => entry.isFile());
  return all.map((entry) => path.relative(ROOT, path.join(entry.parentPath, entry.name))).filter((file) => !/^(node_modules|dist|coverage|\.git)\//.test(file));
}

/** A fault at a node of a file's tree. */
export function faultAt({ file, text, tree }: Source, node: ts.Node, remedy: string): Fault {
  const line = tree === null ? 1 : tree.getLineAndCharacterOfPosition(node.getStart(tree)).line + 1;
  return { file, line, found: (text.split('\n')[line - 1] ?? '').trim(), remedy };
}

/** A fault of a whole file: its name or its size. */
export function faultOf(source: Source, found: string, remedy: string): Fault {
  return { file: source.file, line: 1, found, remedy };
}

/** Every node of a tree, outer ones first. */
export function* nodesOf(node: ts.Node): Generator<ts.Node> {
  yield node;
  for (const child of node.getChildren()) yield* nodesOf(child);
}

/** Faults as a person reads them in the test's output. */
export function report(faults: readonly Fault[]): string {
  return faults.map((f) => `${f.file}:${f.line}: ${f.found}\n    -> ${f.remedy}`).join('\n');
}
