import { defineConfig } from 'vitest/config'
import { shared } from './projects.ts'

/** `npm run test:long`: what nobody wants to wait for at every change. */
export default defineConfig({
  test: { ...shared, include: ['tests/browser/*.long.ts'], testTimeout: 3_600_000, fileParallelism: false },
})
