import { distinct, type Ridge } from '../filter/ridge-score.ts'

/** Fainter ones than this share of the strongest are passed over. */
const FAINTEST = 0.25
const [MOST_TOLD_APART, MOST] = [6, 3] as const
/** Ridges are apart that lie farther from one another than half of the wider one and this, pixels. */
const APART = 2.5
/** One that is narrower than a stronger one by this factor may be a stroke beside another that both together look wide with. */
const MUCH_NARROWER = 3

/** How far a ridge is from where it is looked for: nothing when that lies inside the stroke. */
export const distanceOf = ({ steer, width }: Ridge): number =>
  Math.max(0, steer.reduce((s, o) => s + Math.abs(o), 0) / steer.length - width / 2)

/** Of the ridges that are apart and not much fainter than the strongest, the nearest first. */
export function nearestRidges(ridges: readonly Ridge[], reach: number): Ridge[] {
  const within = ridges.filter((r) => distanceOf(r) <= reach)
  const few = distinct(within, MOST_TOLD_APART, (a, b) => {
    const away = a.steer.map((s, i) => Math.abs(s - (b.steer[i] ?? 0)))
    return Math.max(...away) > Math.max(a.width, b.width) / 2 + APART || MUCH_NARROWER * b.width <= a.width
  })
  const strongest = Math.max(0, ...few.map((r) => Math.abs(r.contrast)))
  return few
    .filter((r) => Math.abs(r.contrast) > FAINTEST * strongest)
    .sort((a, b) => distanceOf(a) - distanceOf(b))
    .slice(0, MOST)
}
