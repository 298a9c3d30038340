import { mergeConfig } from 'vite'
import { defineConfig } from 'vitest/config'
import vite from './vite.config.ts'

export default mergeConfig(
  vite,
  defineConfig({ test: { environment: 'happy-dom', include: ['test/**/*.test.{ts,tsx}'], globals: false } }),
)
