import { Button } from '@mantine/core';
import { Link } from 'wouter';
import { tell } from '../ui/words/tell.ts';

/** The way to take in a table for a car. */
export function TakeInLink({ car }: { readonly car: string }) {
  return <Button component={Link} href={`/car/${car}/import`} size="compact-md" variant="subtle">{tell('import.open')}</Button>;
}
