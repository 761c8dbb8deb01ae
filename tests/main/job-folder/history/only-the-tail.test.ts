import { expect, test } from 'vitest'
import {
  type OpenHistory,
  openHistoryFile,
} from '../../../../src/main/services/job-folder/history/history-handle.ts'
import { openJob } from '../../../../src/main/services/job-folder/open-job.ts'
import { withJob } from '../../fixtures/history-folder.ts'
import { workshopJob } from '../../fixtures/workshop-job.ts'

/** Opens the history and counts the bytes that were read of it. */
function counted(): { open: OpenHistory; bytes: () => number } {
  let read = 0
  const open: OpenHistory = async (path) => {
    const handle = await openHistoryFile(path)
    return {
      read: async (bytes, offset, length, position) => {
        const answer = await handle.read(bytes, offset, length, position)
        read += answer.bytesRead
        return answer
      },
      write: (bytes, offset, length, position) => handle.write(bytes, offset, length, position),
      sync: () => handle.sync(),
      truncate: (length) => handle.truncate(length),
      stat: (options) => handle.stat(options),
      close: () => handle.close(),
    }
  }
  return { open, bytes: () => read }
}

test('opening a job reads the end of its history, however long that is; undo reads the line that it takes back', async () => {
  const { folder } = await workshopJob()
  const reads: number[] = []
  for (const edits of [20, 1500]) {
    await withJob(folder, async (session) => {
      const titles = Array.from({ length: edits }, (_, i) => `Drum, state ${String(i).padStart(6)}`)
      await Promise.all(titles.map((title) => session.edit({ do: 'describe', set: { title } }, 'AR')))
    })
    const { open, bytes } = counted()
    const session = await openJob(folder, { mode: 'write', openHistory: open })
    await session.undo('AR')
    await session.undo('AR')
    reads.push(bytes())
    await session.close()
  }
  const [few = 0, many = 0] = reads
  expect(few).toBeGreaterThan(0)
  // Whoever reads all of it reads some half a megabyte.
  expect(many).toBeLessThan(few + 20_000)
})
