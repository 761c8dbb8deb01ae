import type { ToWorker } from './messages.ts'
import { TableWorker } from './table-worker.ts'

const tableWorker = new TableWorker()

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === 'forget') tableWorker.forget()
  else self.postMessage(tableWorker.answer(data))
})
