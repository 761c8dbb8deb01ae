import { defineConfig } from 'electron-vite'

export default defineConfig({
  main: {
    build: {
      // The command line runs under the Node that a person has, not under Electron's.
      target: 'node20',
      // mathjs is thousands of small files: as part of one, a command starts in about half the time.
      externalizeDeps: { exclude: ['mathjs'] },
      rolldownOptions: {
        input: { cli: 'src/main/cli/index.ts' },
        output: { entryFileNames: '[name].js', chunkFileNames: 'chunks/[name]-[hash].js' },
      },
    },
  },
})
