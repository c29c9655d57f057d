/**
 * Values that no JSON can hold and a window's page can send all the same, as it copies whole values; and some that cannot be copied. To be
 * run in the page: it needs nothing from around it.
 */
export function exoticValue(at: number): unknown {
  const ring: Record<string, unknown> = { id: 'pip' };
  ring['car'] = ring;
  const sparse: unknown[] = [];
  sparse[100] = 'pip';
  const many: readonly (() => unknown)[] = [
    () => undefined, () => Number.NaN, () => Infinity, () => -Infinity, () => -0, () => 10n ** 40n, () => new Date(8.64e15), () => new Date(Number.NaN), () => /(a+)+$/,
    () => new Map<unknown, unknown>([['id', 'pip'], [{}, 1]]), () => new Set(['pip', ring]), () => new Uint8Array(100_000), () => new Float64Array([Number.NaN]), () => new ArrayBuffer(8),
    () => ring, () => [ring, ring], () => sparse, () => Object(1n) as unknown, () => Object('pip') as unknown, () => Object.assign(Object.create(null), { id: 'pip' }) as unknown,
    () => Object.defineProperty({}, 'id', { get: () => { throw new Error('read'); }, enumerable: true }), () => JSON.parse('{"__proto__":{"car":"pip"},"constructor":{"prototype":{}}}') as unknown,
    () => Symbol('pip'), () => () => 'pip', () => ({ id: () => 'pip' }), () => document.body, () => window, () => Promise.resolve(1), () => new Proxy({}, {}), () => new WeakMap(), () => new Error('pip'),
  ];
  return many[at % many.length]?.();
}

/** How many there are to choose from. */
export const EXOTIC_VALUES = 31;
