import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

/**
 * Real-browser tests wait for a page and a finger: on a slow machine the longest take most of a minute, so that two are
 * a hang.
 */
const BROWSER_TIMEOUT_MS = 120_000;
const BROWSER_POLL_MS = 10_000;

export default defineConfig({
  // relative addresses, so the built page works from any folder of any static host
  base: './',
  // one page and no routes: an address with nothing behind it is an error, not the page again
  appType: 'mpa',
  plugins: [react()],
  // what a first visit loads is measured compressed and has its own bar (npm run bench:load); this one is for raw size
  build: {
    target: 'es2022',
    chunkSizeWarningLimit: 1_000,
    rolldownOptions: {
      output: {
        codeSplitting: {
          // what the frame needs comes in one file, though parts that come on demand share some of it: cut up by who
          // shares what it was forty, which pack worse and are each asked for by itself; the entry itself stays apart
          groups: [
            { name: 'frame', tags: ['$initial'], test: (id) => !/index\.html|src\/app\/main\.tsx/.test(id) },
            // and so does what the first picture shares with what comes after it
            { name: 'drawn', minShareCount: 2, test: /src\/(sketch|drawing|look|assess\/brief)/ },
          ],
        },
      },
    },
  },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/{calc,geom,plan,assess,words,drawing,cli,desk,sketch}/**/*.test.ts', 'tests/*.test.ts'],
          exclude: ['**/*.dom.test.ts'],
          // these rooms keep no state, so files share one load of the modules: each by itself took a second for it
          isolate: false,
          maxWorkers: '100%',
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'dom',
          environment: 'happy-dom',
          include: [
            'tests/{desk,sketch}/**/*.dom.test.ts',
            'tests/{desk,sketch}/**/*.test.tsx',
            'tests/{panels,storage,app}/**/*.test.{ts,tsx}',
          ],
          setupFiles: ['tests/support/canvasStub.ts', 'tests/support/cleanUp.ts'],
          maxWorkers: '100%',
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/support/servePage.ts'],
          // files share what they drive the browser with: each loading it for itself takes half a minute in all
          isolate: false,
          // one more than processors, since a page waits for its frames as long as it works, and no second chance: a test
          // that passes now and then is a failing test
          fileParallelism: true,
          maxWorkers: 3,
          retry: 0,
          testTimeout: BROWSER_TIMEOUT_MS,
          hookTimeout: BROWSER_TIMEOUT_MS,
          // what the page does not say by then it does not say: how fast it is, the benches measure
          expect: { poll: { timeout: BROWSER_POLL_MS } },
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
