import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    reporters: ['default', './tests/closing-line.ts'],
    globalSetup: ['tests/build-client.ts'],
    testTimeout: 30_000,
    hookTimeout: 120_000,
  },
});
