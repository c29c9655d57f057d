import { MantineProvider } from '@mantine/core';
import { useMediaQuery } from '@mantine/hooks';
import { useLayoutEffect, type ReactNode } from 'react';
import type { Look as ChosenLook } from '../../shared-core/contract/look.ts';
import { useAsk } from '../ui/use-ask.ts';
import { styleNonce } from './style-nonce.ts';
import { cssVariables, theme } from './theme.ts';

interface Worn {
  readonly scheme: 'light' | 'dark';
  readonly contrast: 'more' | 'usual';
}

const AT_ONCE = { getInitialValueInEffect: false } as const;

/** The look that was chosen, or the one that the computer asks for; the tokens go by it. */
export function Look({ children }: { readonly children: ReactNode }) {
  const { scheme, contrast } = useWorn();
  useLayoutEffect(() => {
    document.documentElement.dataset['contrast'] = contrast;
  }, [contrast]);
  return <MantineProvider theme={theme} cssVariablesResolver={cssVariables} forceColorScheme={scheme} getStyleNonce={styleNonce}>{children}</MantineProvider>;
}

function useWorn(): Worn {
  const state = useAsk('household.state', {});
  const dark = useMediaQuery('(prefers-color-scheme: dark)', false, AT_ONCE);
  const more = useMediaQuery('(prefers-contrast: more)', false, AT_ONCE);
  const asked = { scheme: dark ? 'dark' : 'light', contrast: more ? 'more' : 'usual' } as const;
  return state.state === 'answered' ? wornOf(state.value.look, asked) : asked;
}

function wornOf(look: ChosenLook, asked: Worn): Worn {
  switch (look) {
    case 'system':
      return asked;
    case 'light':
    case 'dark':
      return { scheme: look, contrast: 'usual' };
    case 'contrast-light':
      return { scheme: 'light', contrast: 'more' };
    case 'contrast-dark':
      return { scheme: 'dark', contrast: 'more' };
  }
}
