import type { ServiceItem } from '../care/service-item.ts';

/** What an item needs, each specification once: where an older entry names one twice, both are added up. */
export function needsOfItem({ needs }: ServiceItem): ServiceItem['needs'] {
  const sums = new Map<string, number>();
  for (const { specification, quantity } of needs) sums.set(specification, Math.round(((sums.get(specification) ?? 0) + quantity) * 1000) / 1000);
  return [...sums].map(([specification, quantity]) => ({ specification, quantity }));
}
