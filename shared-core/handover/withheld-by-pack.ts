import type { WithheldField } from './check-report.ts';

/** The fields that packs withhold, each once: those of the pack itself (no path), then those of each earlier keeper's pack in it. */
export function withheldByPack(withheld: readonly WithheldField[]): { readonly path: string | null; readonly fields: readonly string[] }[] {
  const paths = [...new Set(withheld.map((one) => one.path ?? null))];
  return paths.map((path) => ({ path, fields: [...new Set(withheld.filter((one) => (one.path ?? null) === path).map((one) => one.field))] }));
}
