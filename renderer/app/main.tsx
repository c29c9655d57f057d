import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { must } from '../../shared-core/result/assert.ts';
import { onPush } from '../bridge/pushes.ts';
import { App } from './app.tsx';
import { Providers } from './providers.tsx';
import { dropWhatChanged } from './queries.ts';
import { refuseStrayDrops } from './refuse-stray-drops.ts';

// Before the first question: what changes after its answer is then always heard.
onPush(dropWhatChanged);
refuseStrayDrops(window);

createRoot(must(document.getElementById('page'), 'place for the page')).render(
  <StrictMode>
    <Providers>
      <App />
    </Providers>
  </StrictMode>,
);
