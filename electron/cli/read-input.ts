import { readFileSync, statSync } from 'node:fs';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';

const LARGEST_BYTES = 100_000_000;

/** The text of a file, or of standard input for "-". */
export function readText(name: string): Result<string> {
  try {
    if (name !== '-' && statSync(name).size > LARGEST_BYTES) return refuse('file-too-large', { file: name });
    const bytes = readFileSync(name === '-' ? 0 : name);
    return ok(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (error) {
    if (error instanceof TypeError) return refuse('file-not-text', { file: name });
    return refuse('file-unreadable', { file: name });
  }
}

/** The JSON value in a file or on standard input. */
export function readJson(name: string): Result<unknown> {
  const text = readText(name);
  if (!text.ok) return text;
  try {
    return ok(JSON.parse(text.value) as unknown);
  } catch (error) {
    return refuse('file-not-json', { file: name, why: error instanceof Error ? error.message : '' });
  }
}
