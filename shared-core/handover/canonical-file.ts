import type { z } from 'zod';
import { canonicalJson, iJsonFault } from '../journal/canonical-json.ts';
import { fileFault, type Fault, type FoundFile } from './check-fault.ts';

/** What reading a JSON file of a pack came to: its value, or the one fault that keeps it from being read. */
export type CanonicalFile<Value> = { readonly value: Value; readonly fault: null } | { readonly value: null; readonly fault: Fault };

/** The form of all our JSON files. */
const THIS_FORM = 1;

/**
 * Reads a JSON file that must be canonical. Other spacing, another order or a name given twice is a fault, for different
 * programs could then read it differently. A later form is named as such.
 */
export function readCanonical<Value>(files: ReadonlyMap<string, FoundFile>, path: string, schema: z.ZodType<Value>): CanonicalFile<Value> {
  const file = files.get(path);
  if (file === undefined) return { value: null, fault: fileFault('missing', path, 'fault-file-missing') };
  const json = parsed(file.text);
  if (json === undefined) return { value: null, fault: fileFault('changed', path, 'fault-not-json') };
  if (iJsonFault(json) !== null || canonicalJson(json) !== file.text) return { value: null, fault: fileFault('changed', path, 'fault-not-canonical') };
  const value = schema.safeParse(json);
  return value.success ? { value: value.data, fault: null } : { value: null, fault: formFault(path, json, value.error) };
}

/** Undefined, which no JSON text gives, where the text is none. */
function parsed(text: string | null): unknown {
  try {
    return text === null ? undefined : (JSON.parse(text) as unknown);
  } catch {
    return undefined;
  }
}

/** The number of a form that a file says it has; 0 where it says none. @example formNumber('trunnion-rows-12') //=> 12 */
function formNumber(format: string): number {
  return Number(/^trunnion-[a-z]+-([1-9]\d*)$/.exec(format)?.[1] ?? 0);
}

function formFault(path: string, json: unknown, error: z.ZodError): Fault {
  const format = typeof json === 'object' && json !== null && 'format' in json ? String(json.format) : '';
  if (formNumber(format) > THIS_FORM) return fileFault('not-a-pack', path, 'fault-newer-form', { format });
  return fileFault('not-a-pack', path, 'fault-wrong-form', { field: error.issues[0]?.path.join('.') ?? '' });
}
