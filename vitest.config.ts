import { defineConfig } from 'vitest/config';

/** On a build machine, whose neighbours nobody controls, a browser test gets more chances; at home it does not. */
const BROWSER_RETRIES = process.env.CI === 'true' ? 2 : 0;

export default defineConfig({
  test: {
    reporters: ['default', './tests/closing-line.ts'],
    testTimeout: 30_000,
    hookTimeout: 120_000,
    // What a screen shows is asked for until it is as expected: a build machine may take its time.
    expect: { poll: { timeout: 10_000 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          globalSetup: ['tests/build-client.ts'],
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/build-client.ts'],
          // One file at a time and after all others: these tests see what a user would see, and two browsers on two
          // cores starve each other.
          fileParallelism: false,
          sequence: { groupOrder: 1 },
          retry: BROWSER_RETRIES,
        },
      },
    ],
  },
});
