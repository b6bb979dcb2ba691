import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: { include: ['{engine,cli,store,server,web,samples,tests}/**/*.test.ts'], testTimeout: 30_000 },
});
