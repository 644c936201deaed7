// A worker thread does not inherit the loader that lets the program run its .ts files, so it registers its own.
import { register } from 'tsx/esm/api';

register();
await import('./calendar-worker.ts');
