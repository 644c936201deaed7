import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

/** Builds the screens into `client/dist`; `vite --config client/vite.config.ts` serves them with /api passed on. */
export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  // Libraries ship a chatty development form as well; the screens take the other, however the build was started.
  resolve: { conditions: ['module', 'browser', 'production'] },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: ['chrome123', 'firefox121', 'safari17.5'],
    assetsInlineLimit: 0,
    rolldownOptions: {
      output: { codeSplitting: { groups: [{ name: 'grid-library', test: /node_modules[\\/]ag-/ }] } },
    },
    // The grid library is one chunk of its own, fetched beside the shell; its size is known and watched.
    chunkSizeWarningLimit: 1200,
  },
  server: {
    host: '127.0.0.1',
    proxy: { '/api': { target: 'http://127.0.0.1:4860', changeOrigin: true } },
  },
});
