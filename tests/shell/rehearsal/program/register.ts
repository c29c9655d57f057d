import { registerHooks } from 'node:module';

const STAND_IN = new URL('./electron.ts', import.meta.url).href;

// Wherever the program imports `electron`, it gets the stand-in.
registerHooks({
  resolve: (specifier, context, next) => (specifier === 'electron' ? { url: STAND_IN, format: 'module-typescript', shortCircuit: true } : next(specifier, context)),
});
