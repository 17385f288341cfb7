/**
 * Keeps the page's own files on this machine, so that it opens without a network. A newer version
 * waits until the page says it may take over: nothing changes under a plan that is open.
 */
import { cleanupOutdatedCaches, type PrecacheEntry, precacheAndRoute } from 'workbox-precaching';

/** Every file of the built page, named when it is built. */
declare const PAGE_FILES: PrecacheEntry[];
declare const self: {
  addEventListener(type: 'message', hear: (event: { data: unknown }) => void): void;
  skipWaiting(): Promise<void>;
};

cleanupOutdatedCaches();
precacheAndRoute(PAGE_FILES);

self.addEventListener('message', ({ data }) => {
  if (data === 'take over') void self.skipWaiting();
});
