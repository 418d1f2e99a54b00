import preact from '@preact/preset-vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: 'src',
  base: './',
  publicDir: '../public',
  build: { outDir: '../dist', emptyOutDir: true, target: 'es2022' },
  plugins: [preact()],
  test: {
    root: '.',
    environment: 'node',
    include: ['test/**/*.test.{ts,tsx}'],
    exclude: ['test/e2e/**', '**/node_modules/**'],
  },
});
