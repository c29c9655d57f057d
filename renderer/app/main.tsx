import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { must } from '../../shared-core/result/assert.ts';
import { App } from './app.tsx';
import { Providers } from './providers.tsx';

createRoot(must(document.getElementById('page'), 'place for the page')).render(
  <StrictMode>
    <Providers>
      <App />
    </Providers>
  </StrictMode>,
);
