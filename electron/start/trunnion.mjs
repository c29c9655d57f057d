#!/usr/bin/env node
// The `trunnion` command: the same door as `npm run trunnion --`, from any folder.
import process from 'node:process';

process.argv.splice(2, 0, 'trunnion');
await import('./bootstrap.mjs');
