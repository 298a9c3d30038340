import preact from '@preact/preset-vite'
import { defineConfig } from 'vite'

const backend = process.env.BACKEND ?? 'http://127.0.0.1:8480'

export default defineConfig({
  plugins: [preact({ devToolsEnabled: false, prefreshEnabled: false })],
  build: {
    // the folder that a jar serves as static files
    outDir: 'target/classes/META-INF/resources',
    emptyOutDir: true,
    target: 'es2023',
    assetsInlineLimit: 0,
    manifest: 'client-files.json',
    reportCompressedSize: false,
  },
  server: { proxy: { '/api': { target: backend } } },
})
