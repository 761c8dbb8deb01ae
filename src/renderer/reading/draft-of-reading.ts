import type { Candidate, Job, View } from '../../core/job/model/types.ts'
import type { FigureReading } from '../../core/reading/figure-reading.ts'
import { isTaken, nameOfLabel } from '../entering/name-of-label.ts'
import type { FigureStands } from '../entering/new-evidence.ts'

/** To so many places probabilities are kept. */
const PLACES = 4

const rounded = (probability: number): number => Number(probability.toFixed(PLACES))

/** All that strokes could be, with how likely each is by the strokes: what else is known is weighed where it counts. */
function candidatesOf({ text, probability, alternatives }: FigureReading): Candidate[] {
  const own = text === null ? [] : [{ text, probability }]
  return [...own, ...alternatives]
    .map((one) => ({ text: one.text, probability: rounded(one.probability) }))
    .filter((one) => one.probability > 0)
}

const whole = (value: number): number => Math.round(value * 10) / 10

/**
 * Where a figure stands that was read, what was read, and where it stays doubtful what else it could be.
 */
export function standsAt(reading: FigureReading, doubtful: boolean): FigureStands {
  const [x, y, width, height] = reading.box
  const candidates = doubtful ? candidatesOf(reading) : []
  const read = reading.text ?? reading.asRead
  return {
    box: [whole(x), whole(y), Math.max(0.1, whole(width)), Math.max(0.1, whole(height))],
    ...(read === '' ? {} : { read: { text: read, probability: rounded(reading.probability) } }),
    ...(candidates.length === 0 ? {} : { candidates }),
  }
}

const isWithin = ({ outline }: View, [x, y]: readonly [number, number]): boolean => {
  if (outline === undefined || outline.length === 0) return false
  const xs = outline.map(([px]) => px)
  const ys = outline.map(([, py]) => py)
  return x >= Math.min(...xs) && x <= Math.max(...xs) && y >= Math.min(...ys) && y <= Math.max(...ys)
}

/** What a new dimension may be called that has this figure, by the view in which it stands; a person writes better. */
export function proposedLabel(job: Job, sheet: string, { box }: FigureReading, text: string): string {
  const [x, y, width, height] = box
  const middle = [x + width / 2, y + height / 2] as const
  const view = job.views.find((one) => one.sheet === sheet && isWithin(one, middle))
  const plain = `${view?.name ?? 'Figure'}, ${text === '' ? 'size' : text}`
  let label = plain
  for (let n = 2; isTaken(job, nameOfLabel(label)); n++) label = `${plain}, no. ${n}`
  return label
}
