import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['{engine,cli,store,server,web,samples,tests}/**/*.test.ts'],
    testTimeout: 30_000,
    // The browser's tests mostly wait; with one worker a computer of two cores would wait with them.
    maxWorkers: Math.max(2, availableParallelism() - 1),
  },
});
