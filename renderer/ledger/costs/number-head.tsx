import { Table } from '@mantine/core';
import sectionStyles from '../../ui/section.module.css';

/** The head of a column of numbers. */
export function NumberHead({ children }: { readonly children: string }) {
  return <Table.Th scope="col" className={sectionStyles.number ?? ''}>{children}</Table.Th>;
}
