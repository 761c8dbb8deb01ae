import type { ToWorker } from './messages.ts'
import { WorkOut } from './work-out.ts'

const workOut = new WorkOut()

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  self.postMessage(workOut.answer(data))
})
