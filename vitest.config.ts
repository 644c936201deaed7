import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    reporters: ['default', './tests/closing-line.ts'],
    globalSetup: ['tests/build-client.ts'],
    testTimeout: 30_000,
    hookTimeout: 120_000,
    // One file at a time: the browser tests measure what a user would see, and two browsers on two cores starve
    // each other.
    fileParallelism: false,
    // On a build machine, whose neighbours nobody controls, a test gets a second chance; at home it does not.
    retry: process.env.CI === 'true' ? 1 : 0,
  },
});
