import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

/**
 * What the built page may do: nothing leaves it, nothing foreign runs in it. Written into the page
 * itself, so it also holds where no server sends headers, and sent as a header by the preview.
 */
export const CONTENT_POLICY = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self' blob:",
  "img-src 'self' data: blob:",
  "connect-src 'self' blob: data:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Puts the policy first in the built page's head: a policy binds only what comes after it. */
function contentPolicy(): Plugin {
  return {
    name: 'content-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: CONTENT_POLICY },
        injectTo: 'head-prepend',
      },
    ],
  };
}

export default defineConfig({
  base: './',
  plugins: [react(), contentPolicy()],
  build: {
    target: 'es2023',
    // Inlined assets would be data: addresses, which the policy refuses for everything but images.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1200,
    sourcemap: false,
    // The engine's modules only define things, so what the first sheet does not use of them goes
    // with the sheet that does.
    rolldownOptions: {
      treeshake: { moduleSideEffects: [{ test: /\/src\/geometry\//, sideEffects: false }] },
    },
  },
  worker: { format: 'es' },
  preview: { port: 4173, headers: { 'Content-Security-Policy': CONTENT_POLICY } },
  test: {
    environment: 'node',
    include: ['tests/**/*.test.{ts,tsx}'],
    exclude: ['tests/browser/**'],
    // Two cores are the smallest machine this is tested on.
    testTimeout: 20_000,
  },
});
