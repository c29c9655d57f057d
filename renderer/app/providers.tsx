import '@mantine/core/styles.layer.css';
import './fonts.css';
import './tokens.css';
import { MantineProvider } from '@mantine/core';
import { QueryClientProvider } from '@tanstack/react-query';
import { useEffect, type ReactNode } from 'react';
import { onPush } from '../bridge/pushes.ts';
import { styleNonce } from './style-nonce.ts';
import { dropWhatChanged, queries } from './queries.ts';
import { cssVariables, theme } from './theme.ts';

/** What every screen stands in: the look, and the cache of the host's answers, which drops what the host says has changed. */
export function Providers({ children }: { readonly children: ReactNode }) {
  useEffect(() => onPush(dropWhatChanged), []);
  return (
    <MantineProvider theme={theme} cssVariablesResolver={cssVariables} defaultColorScheme="auto" getStyleNonce={styleNonce}>
      <QueryClientProvider client={queries}>{children}</QueryClientProvider>
    </MantineProvider>
  );
}
