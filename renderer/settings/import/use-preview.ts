import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { Refusal, Result } from '../../../shared-core/result/result.ts';
import type { ImportView } from '../../../shared-core/views/import/import-view.ts';
import { runLong } from '../../ui/run-long.ts';
import type { TableDraft } from './table-draft.ts';

/** What is known of a table: the last answer that showed it, and what the last one refused. */
export interface Preview {
  readonly view: ImportView | null;
  readonly refusal: Refusal | null;
  readonly asking: boolean;
  readonly again: () => void;
}

/** Asks what a table would come to, anew after each choice and whenever something is entered; what was shown stays until the answer is there. */
export function usePreview({ table, choices }: TableDraft): Preview {
  const query = useQuery({
    // The table itself is no part of the key: it may be long.
    queryKey: ['import.preview', table.key, choices],
    queryFn: (): Promise<Result<ImportView>> => runLong('import.preview', { ...choices, base64: table.base64, text: table.text, name: table.name }),
    placeholderData: keepPreviousData,
    gcTime: 0,
  });
  const [shown, setShown] = useState<ImportView | null>(null);
  const result = query.data;
  if (result?.ok === true && result.value !== shown) setShown(result.value);
  return { view: shown, refusal: result?.ok === false ? result.refusal : null, asking: query.isFetching, again: () => void query.refetch() };
}
