import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import preact from '@preact/preset-vite';
import { defineConfig, type Plugin } from 'vite';
import { VitePWA, type VitePWAOptions } from 'vite-plugin-pwa';
import { PRECACHE_LIST } from './src/screens/offline.ts';

const DIST = new URL('./dist/', import.meta.url);

const SOURCE = /[\\/]src[\\/]/;

type WorkboxOptions = NonNullable<VitePWAOptions['workbox']>;
type ManifestTransform = NonNullable<WorkboxOptions['manifestTransforms']>[number];

/**
 * Writes down what the service worker must have in its cache, as the cache's own keys, so that the app can look for
 * itself before it says that it works without signal. The list is cached along with the rest.
 */
const listPrecache: ManifestTransform = (entries) => {
  const keys = entries.map(({ url, revision }) =>
    revision === null ? url : `${url}?__WB_REVISION__=${revision}`,
  );
  const text = JSON.stringify(keys.sort());
  writeFileSync(new URL(PRECACHE_LIST, DIST), text);
  const revision = createHash('md5').update(text).digest('hex');
  return { manifest: [...entries, { url: PRECACHE_LIST, revision, size: text.length }], warnings: [] };
};

/** The development server puts styles into the page itself; only there is that allowed. */
const developmentStyles: Plugin = {
  name: 'development-styles',
  apply: 'serve',
  transformIndexHtml: (html) => html.replace("style-src 'self'", "style-src 'self' 'unsafe-inline'"),
};

/**
 * Tells the engine to compile all functions of a file while the file is read, off the page's own thread, instead of each when
 * it is first called, on it (V8's explicit compile hints; other engines take it for a comment). From the phone's cache that
 * is most of what a cold start waits for.
 */
const COMPILE_ALL = '//# allFunctionsCalledOnLoad';

export default defineConfig({
  root: 'src',
  base: './',
  publicDir: '../public',
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    // Everything comes from the phone's cache: hints to fetch it early only cost time, and styles in parts hold up scripts.
    modulePreload: false,
    cssCodeSplit: false,
    // What the page needs at once in one file, what phases share in another: from a cache, many small files take longest.
    rolldownOptions: {
      output: {
        postBanner: COMPILE_ALL,
        codeSplitting: {
          groups: [
            { name: 'start', tags: ['$initial'], priority: 1 },
            { name: 'job', test: SOURCE, minShareCount: 2 },
          ],
        },
      },
    },
  },
  plugins: [
    preact(),
    developmentStyles,
    VitePWA({
      registerType: 'prompt',
      injectRegister: false,
      manifest: {
        name: 'Swingtape',
        short_name: 'Swingtape',
        description: 'Posts in the right place, proved with two tapes before the concrete sets.',
        start_url: './',
        scope: './',
        display: 'standalone',
        background_color: '#ffffff',
        theme_color: '#ffffff',
        icons: [
          { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
          { src: 'icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
          { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
        ],
      },
      workbox: {
        globPatterns: ['**/*.{html,js,css,json,svg,png,txt}'],
        // The README's picture is served, and no use on a phone.
        globIgnores: ['picture.png'],
        navigateFallback: 'index.html',
        // The page that installs the worker is served by it at once, so that its later parts come from the cache too.
        clientsClaim: true,
        cleanupOutdatedCaches: true,
        manifestTransforms: [listPrecache],
      },
    }),
  ],
});
