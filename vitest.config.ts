import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // The coverage and kill tests do real work for tens of seconds on two cores.
    testTimeout: 120_000,
    hookTimeout: 60_000,
  },
})
