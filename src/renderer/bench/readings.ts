import type { FigureBox, PagePlace, SheetReadings } from '../../contract/readings.ts'
import { useBench } from './bench-store.ts'
import { endWork, showWork } from './notices.ts'
import { ask, theHost } from './the-host.ts'
import { asTheyReadNow, withNews } from './told-readings.ts'

/** The newest box that was asked for: what is told of an older one is no longer wanted. */
let asked = 0

/** Has the figure in a box of a sheet read, and puts it at hand. */
export async function readFigure(sheet: string, box: FigureBox, angle: number | null): Promise<void> {
  const mine = ++asked
  const job = useBench.getState().opened?.id
  const figure = { sheet, box, angle }
  useBench.setState({ figure: { ...figure, state: { is: 'being read' } } })
  const reply = await theHost().ask('read-figure', {
    sheet,
    box,
    ...(job === undefined ? {} : { job }),
    ...(angle === null ? {} : { angle }),
  })
  if (mine !== asked) return
  const state = reply.ok
    ? ({ is: 'read', reading: reply.answer } as const)
    : ({ is: 'not read', sentence: reply.sentence } as const)
  useBench.setState({ figure: { ...figure, state } })
}

/** Puts away the figure that is at hand; what is still told of it is not wanted. */
export function putAwayFigure(): void {
  asked++
  useBench.setState({ figure: null })
}

const jobId = (): { job?: string } => {
  const id = useBench.getState().opened?.id
  return id === undefined ? {} : { job: id }
}

/** Has what was read of a sheet told, now or another time. */
export async function getReadings(sheet: string): Promise<void> {
  took(await ask('readings', { ...jobId(), sheet }))
}

/**
 * Begins to read all figures of a sheet, or goes on with it.
 * @param near what is looked at, so that the figures round it come first
 */
export async function readSheet(sheet: string, near: PagePlace | null): Promise<void> {
  took(await ask('read-sheet', { ...jobId(), sheet, ...(near === null ? {} : { near }) }))
}

export async function stopReading(sheet: string): Promise<void> {
  took(await ask('stop-reading', { ...jobId(), sheet }))
}

/** Has figures of a sheet read with its hand, or without, from now on. */
export async function readWithHand(sheet: string, on: boolean): Promise<void> {
  took(await ask('read-with-hand', { ...jobId(), sheet, on }))
}

/** Puts the figures of a sheet in the order that they have as they read by now. */
export function orderAnew(sheet: string): void {
  const { readings } = useBench.getState()
  const told = readings[sheet]
  if (told !== undefined) useBench.setState({ readings: { ...readings, [sheet]: asTheyReadNow(told) } })
}

function took(answer: SheetReadings | undefined): void {
  if (answer !== undefined) takeIn(answer)
}

/** Takes in how far the reading of a sheet is, and what is new of it. */
export function heardOfReadings(job: string, news: SheetReadings): void {
  if (useBench.getState().opened?.id === job) takeIn(news)
}

/** Answers have all figures that were read so far, events those that are new: either may come first. */
function takeIn(told: SheetReadings): void {
  const { readings } = useBench.getState()
  const next = withNews(readings[told.sheet], told)
  useBench.setState({ readings: { ...readings, [told.sheet]: next } })
  const { state, done, of, sentence } = next.progress
  const id = `reading ${told.sheet}`
  if (state === 'reading') {
    const cancel = () => void stopReading(told.sheet)
    showWork({ id, name: sentence, done: of === 0 ? 0 : done / of, cancel })
  } else endWork(id)
}
