import type { Host } from '../../shared-core/contract/host.ts';
import { refuse } from '../../shared-core/result/result.ts';

/** The field of an operation by which the command line names a place on the disk. */
const PLACE_FIELDS: Readonly<Record<string, string | undefined>> = { 'pack.write': 'out', 'pack.check': 'pack', 'pack.take-in': 'pack' };

/**
 * The host as a page may use it. Where on the disk something is written or read is the person's to say, on the command line or in a
 * dialog; from a page it is refused before the host hears of it, so that no page can make the program write into any folder.
 *
 * @example pageHost(host).call('pack.write', { car: 'pip', out: '/etc' }) //=> refused 'place-named-by-page'
 */
export function pageHost(host: Host): Host {
  return {
    call: (operation, request) => (namesPlace(operation, request) ? Promise.resolve(refuse('place-named-by-page')) : host.call(operation, request)),
    onPush: (listener) => host.onPush(listener),
    close: () => host.close(),
  };
}

function namesPlace(operation: string, request: unknown): boolean {
  const field = Object.hasOwn(PLACE_FIELDS, operation) ? PLACE_FIELDS[operation] : undefined;
  if (field === undefined || typeof request !== 'object' || request === null || !Object.hasOwn(request, field)) return false;
  return (request as Readonly<Record<string, unknown>>)[field] !== null;
}
