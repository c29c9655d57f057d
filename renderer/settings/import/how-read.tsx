import { NativeSelect } from '@mantine/core';
import { tell } from '../../ui/words/tell.ts';

interface HowReadProps<Value extends string> {
  readonly label: string;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  /** As the person said; null: as found. */
  readonly chosen: Value | null;
  /** As the table is read now. */
  readonly found: Value | null;
  /** What shows it. */
  readonly why?: string;
  /** What is said where nothing was found, or was asked for. */
  readonly none: string;
  readonly onChoose: (value: Value | null) => void;
}

/** One thing found out about a table: what was found stands first, and may be gone back to. */
export function HowRead<Value extends string>({ label, options, chosen, found, why = '', none, onChoose }: HowReadProps<Value>) {
  const said = found === null ? undefined : options.find(({ value }) => value === found);
  const asFound = chosen !== null ? tell('import.found-again') : said === undefined ? none : tell('import.found', { what: said.label });
  return (
    <NativeSelect
      label={label}
      w="100%"
      inputWrapperOrder={['label', 'input', 'description']}
      {...(why === '' ? {} : { description: why })}
      value={chosen ?? ''}
      data={[{ value: '', label: asFound }, ...options.filter(({ value }) => chosen !== null || value !== found)]}
      onChange={(event) => onChoose(options.find(({ value }) => value === event.currentTarget.value)?.value ?? null)}
    />
  );
}
