import type { Reporter, TestModule } from 'vitest/node';

/** Ends a test run with one plain line that scripts can read: `N passed, N failed, N skipped`. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[] = []): void {
    let passed = 0;
    let failed = unhandledErrors.length;
    let skipped = 0;
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const state = test.result().state;
        if (state === 'passed') passed++;
        else if (state === 'failed') failed++;
        else skipped++;
      }
      failed += module.errors().length;
    }
    console.log(`${passed} passed, ${failed} failed, ${skipped} skipped`);
  }
}
