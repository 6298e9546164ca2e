import optimizeLocales from '@react-aria/optimize-locales-plugin';
import { defineConfig } from 'vite';

// The server's content policy allows only files of its own: no inlined assets, scripts or styles.
export default defineConfig({
  // The dashboard is in English: the widgets' own words in thirty other languages stay out of the bundle.
  plugins: [optimizeLocales.vite({ locales: ['en-US'] })],
  oxc: { jsx: { runtime: 'automatic' } },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    sourcemap: false,
    rolldownOptions: { checks: { moduleLevelDirective: false } },
  },
  server: {
    host: '127.0.0.1',
    port: 5173,
    proxy: { '/api': { target: 'http://127.0.0.1:8420', changeOrigin: false } },
  },
});
