// Loaded into each measured process: when it ends, it says what it used. A worker thread is part of its process.
const { appendFileSync } = require('node:fs');
const { isMainThread } = require('node:worker_threads');

if (isMainThread) {
  process.on('exit', () => {
    const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
    appendFileSync(
      process.env.BENCH_USAGE,
      `${JSON.stringify({ cpu: (userCPUTime + systemCPUTime) / 1e6, maxRSS })}\n`,
    );
  });
}
