import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/result/result.ts';
import type { CarView } from '../../../shared-core/views/car-view.ts';
import type { CoverageView } from '../../../shared-core/views/coverage-view.ts';
import { FieldsRead } from '../../ui/form/read-fields.ts';

export type Service = NonNullable<CoverageView['plan']>;
export type ServiceLine = Service['lines'][number];
type Item = CarView['items'][number]['item'];

/** What is typed into the form of a service. */
export interface ServiceDraft {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly lines: readonly ServiceLine[];
}

/** The form as it opens: a known service as it stands, a new one from today. */
export function serviceDraft(service: Service | null, today: string): ServiceDraft {
  return { name: service?.name ?? '', from: service?.from ?? today, to: service?.to ?? '', lines: service?.lines ?? [] };
}

/** An item of the car as a line. */
export function lineOf({ id, name, work }: Item): ServiceLine {
  return { item: id, name, work };
}

/** The same lines with every item of the car among them. */
export function withAllItems(lines: readonly ServiceLine[], items: readonly Item[]): readonly ServiceLine[] {
  return [...lines, ...items.filter((item) => !lines.some((line) => line.item === item.id)).map(lineOf)];
}

/** Reads the form's fields as the service they describe; lines of one's own that were left empty are none. */
export function composeService(draft: ServiceDraft, car: string, service: Service | null): Result<RequestOf<'service-plan.set'>> {
  const read = new FieldsRead();
  const lines = draft.lines.filter((line) => line.item !== null || line.name.trim() !== '');
  if (lines.length === 0) read.refuse('lines', 'nothing-chosen');
  const from = read.date('from', draft.from);
  return read.whole({
    ...(service === null ? {} : { id: service.id }),
    car,
    name: draft.name,
    ...(from === undefined ? {} : { from }),
    to: read.dateOrNull('to', draft.to),
    lines: lines.map(({ item, name, work }) => ({ item, name, work })),
  });
}
