import { defineConfig } from 'electron-vite'

export default defineConfig({
  main: {
    build: {
      // The command line runs under the Node that a person has, not under Electron's.
      target: 'node20',
      rolldownOptions: {
        input: {
          cli: 'src/main/cli/index.ts',
          electron: 'src/main/electron/index.ts',
          figures: 'src/main/services/reading/process/figure-process.ts',
          pyramid: 'src/main/services/pictures/process/pyramid-process.ts',
          reader: 'src/main/services/scans/reader/reader-process.ts',
        },
        output: { entryFileNames: '[name].js', chunkFileNames: 'chunks/[name]-[hash].js' },
      },
    },
  },
  preload: {
    build: {
      // A sandboxed preload is one CommonJS file that can require nothing but electron.
      externalizeDeps: false,
      rolldownOptions: {
        input: { index: 'src/main/electron/preload/index.ts' },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    worker: { format: 'es' },
    build: {
      // The oldest browser whose application window may show the page; Electron's own is newer.
      target: 'chrome130',
      // The page's policy takes fonts and workers from files only, never from data: addresses.
      assetsInlineLimit: 0,
      minify: true,
      // The page comes from this machine's own disk: one file of a few megabytes starts sooner than many small ones.
      chunkSizeWarningLimit: 4096,
      rolldownOptions: {
        input: 'src/renderer/index.html',
        // Libraries mark what may not run on a server; there is none.
        checks: { moduleLevelDirective: false },
      },
    },
  },
})
