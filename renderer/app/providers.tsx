import '@mantine/core/styles.layer.css';
import './fonts.css';
import './tokens.css';
import './contrast.css';
import './print.css';
import { QueryClientProvider } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { Look } from './look.tsx';
import { queries } from './queries.ts';

/** What every screen stands in: the cache of the host's answers, and the look. */
export function Providers({ children }: { readonly children: ReactNode }) {
  return (
    <QueryClientProvider client={queries}>
      <Look>{children}</Look>
    </QueryClientProvider>
  );
}
