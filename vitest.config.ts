import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    testTimeout: 30_000,
    hookTimeout: 60_000,
    // The browser's tests mostly wait; with one worker a computer of two cores would wait with them.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    projects: [
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/*.test.ts'],
          // A browser on a busy computer now and then gives a page no frame for half a minute. What fails twice is a failure.
          retry: 1,
        },
      },
      {
        extends: true,
        test: {
          name: 'rest',
          include: ['{engine,cli,store,server,web,samples,tests}/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          // Modules here keep nothing that one test could leave for another: read once for each worker, not for each file.
          isolate: false,
        },
      },
    ],
  },
});
