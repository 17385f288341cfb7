import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { build, type Plugin, type ResolvedConfig } from 'vite';
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

/**
 * Builds the worker that keeps the page's files on the machine, with the list of them: it can only
 * be built after everything else has been.
 */
function keptOffline(): Plugin {
  let config: ResolvedConfig;
  return {
    name: 'kept-offline',
    apply: 'build',
    configResolved(resolved) {
      config = resolved;
    },
    async closeBundle() {
      const out = resolve(config.root, config.build.outDir);
      const files = readdirSync(out, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => join(entry.parentPath, entry.name))
        .map((path) => ({
          url: relative(out, path).split('\\').join('/'),
          revision: createHash('sha256').update(readFileSync(path)).digest('hex').slice(0, 16),
        }));
      await build({
        configFile: false,
        root: config.root,
        logLevel: 'warn',
        define: {
          PAGE_FILES: JSON.stringify(files),
          'process.env.NODE_ENV': JSON.stringify('production'),
        },
        publicDir: false,
        build: {
          outDir: out,
          emptyOutDir: false,
          target: 'es2023',
          lib: {
            entry: join(config.root, 'src/offline.worker.ts'),
            formats: ['iife'],
            name: 'offline',
            fileName: () => 'offline.js',
          },
        },
      });
    },
  };
}

export default defineConfig({
  base: './',
  plugins: [react(), contentPolicy(), keptOffline()],
  build: {
    target: 'es2023',
    // Inlined assets would be data: addresses, which the policy refuses for everything but images.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1200,
    sourcemap: false,
    // These modules only define things, so what the first sheet does not use of them goes with the
    // sheet that does.
    rolldownOptions: {
      treeshake: {
        moduleSideEffects: [{ test: /\/src\/(geometry|plan|exchange)\//, sideEffects: false }],
      },
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
