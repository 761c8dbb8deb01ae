/** What the main thread of a page did for each frame, from a trace of the browser. */

interface TraceEvent {
  name: string
  ph: string
  pid: number
  tid: number
  /** Microseconds. */
  ts: number
  dur?: number
  /** Of the processor's time, what the thread itself had. */
  tdur?: number
  args?: { name?: string }
}

const TASK = 'ThreadControllerImpl::RunTask'
const FRAME = 'FireAnimationFrame'

/** What is to be traced. */
export const CATEGORIES = ['toplevel', 'devtools.timeline', '__metadata']

/** What the main thread did for one frame, milliseconds: by the clock, and of the processor's time. */
export interface FrameWork {
  clock: number
  processor: number
}

/**
 * How long the page's main thread was busy for each frame that it painted: every task on it, whatever it did (events,
 * scripts, layout, paint, clearing up), from the end of one frame's task to the end of the next one's. By the clock,
 * time that other programs took away counts as well.
 * @param trace as the browser gives it
 * @param page the process of the page
 */
export function frameWork(trace: Buffer, page: number): FrameWork[] {
  const { traceEvents } = JSON.parse(trace.toString()) as { traceEvents: TraceEvent[] }
  const main = traceEvents.find(
    ({ name, pid, args }) => name === 'thread_name' && pid === page && args?.name === 'CrRendererMain',
  )
  if (main === undefined) throw new Error('The trace has no main thread of the page.')
  const own = traceEvents
    .filter(({ pid, tid, ph }) => pid === main.pid && tid === main.tid && ph === 'X')
    .sort((a, b) => a.ts - b.ts)
  const tasks = outermost(own.filter(({ name }) => name === TASK))
  const frames = own.filter(({ name }) => name === FRAME)
  const work: FrameWork[] = []
  let [clock, processor, next] = [0, 0, 0]
  for (const { ts, dur = 0, tdur = 0 } of tasks) {
    clock += dur / 1000
    processor += tdur / 1000
    let painted = false
    for (; next < frames.length && (frames[next]?.ts ?? 0) < ts + dur; next++) painted = true
    if (!painted) continue
    work.push({ clock, processor })
    clock = 0
    processor = 0
  }
  return work
}

/** Tasks that run inside another are part of it. */
function outermost(tasks: readonly TraceEvent[]): TraceEvent[] {
  let end = -1
  return tasks.filter(({ ts, dur = 0 }) => {
    if (ts < end) return false
    end = ts + dur
    return true
  })
}

/** The value below which a share of them lie. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN
}
