import { defineConfig } from 'vitest/config';

// As many files at once as there are processors: left to itself the runner keeps one free, which on two halves the pace.
const maxWorkers = '100%';

export default defineConfig({
  test: {
    maxWorkers,
    projects: [
      {
        test: {
          name: 'core',
          environment: 'node',
          include: ['tests/{core,electron,migrations,demo-data,house}/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
          maxWorkers,
        },
      },
      {
        test: {
          name: 'ui',
          environment: 'jsdom',
          include: ['tests/renderer/**/*.test.{ts,tsx}'],
          setupFiles: ['tests/renderer/setup.ts'],
          testTimeout: 30_000,
          hookTimeout: 60_000,
          maxWorkers,
        },
      },
      {
        test: {
          name: 'journeys',
          environment: 'node',
          include: ['tests/journeys/**/*.test.ts'],
          testTimeout: 180_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
