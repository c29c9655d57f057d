import '@mantine/core/styles.layer.css';
import './fonts.css';
import './tokens.css';
import { MantineProvider } from '@mantine/core';
import { QueryClientProvider } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { styleNonce } from './style-nonce.ts';
import { queries } from './queries.ts';
import { cssVariables, theme } from './theme.ts';

/** What every screen stands in: the look, and the cache of the host's answers. */
export function Providers({ children }: { readonly children: ReactNode }) {
  return (
    <MantineProvider theme={theme} cssVariablesResolver={cssVariables} defaultColorScheme="auto" getStyleNonce={styleNonce}>
      <QueryClientProvider client={queries}>{children}</QueryClientProvider>
    </MantineProvider>
  );
}
