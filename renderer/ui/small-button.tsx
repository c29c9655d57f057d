import { Button } from '@mantine/core';

interface SmallButtonProps {
  readonly children: string;
  /** What it is done to, for who hears the buttons one after another. */
  readonly of: string;
  readonly onPress: () => void;
}

/** A button of a row: its word to be seen, with what it is about to be heard. */
export function SmallButton({ children, of, onPress }: SmallButtonProps) {
  return <Button size="compact-sm" variant="default" aria-label={`${children}: ${of}`} onClick={onPress}>{children}</Button>;
}
