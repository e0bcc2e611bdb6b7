import type { Reporter, TestModule } from "vitest/node";

/** Closes a test run with one plain line that any script can read: `12 passed, 0 failed`. */
export default class PlainReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    let passed = 0;
    let failed = 0;
    let skipped = 0;
    for (const module of modules) {
      const before = passed + failed + skipped;
      for (const test of module.children.allTests()) {
        const state = test.result().state;
        if (state === "passed") passed += 1;
        else if (state === "failed") failed += 1;
        else skipped += 1;
      }
      // A file that could not even be loaded holds no test, and must still count.
      if (passed + failed + skipped === before && module.state() === "failed") failed += 1;
    }
    console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`);
  }
}
