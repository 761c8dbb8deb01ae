import { type Pixel, pixel } from '../../geometry/frames.ts'
import { type Arm, unit } from './crossing-arms.ts'

/** Two arms in one line, on both sides of the place, are one stroke. */
export function joinArms(arms: readonly Arm[]): Arm[] {
  const joined: Arm[] = []
  const used = new Set<Arm>()
  for (const a of arms) {
    if (used.has(a)) continue
    used.add(a)
    const other = arms.find((b) => !used.has(b) && areOne(a, b))
    if (other === undefined) {
      joined.push(a)
      continue
    }
    used.add(other)
    const [ux, uy] = unit(a.direction)
    const [vx, vy] = unit(other.direction)
    const direction = Math.atan2(uy - vy, ux - vx)
    const foot: Pixel = pixel((a.foot[0] + other.foot[0]) / 2, (a.foot[1] + other.foot[1]) / 2)
    joined.push({
      ...a,
      foot,
      direction,
      from: -other.to,
      begins: Math.min(a.begins, other.begins),
      strength: a.strength + other.strength,
    })
  }
  return joined
}

function areOne(a: Arm, b: Arm): boolean {
  const turn = Math.cos(a.direction - b.direction)
  const apart = Math.hypot(a.foot[0] - b.foot[0], a.foot[1] - b.foot[1])
  const wider = Math.max(a.width, b.width) / Math.min(a.width, b.width)
  return turn < -0.98 && apart < 1.2 && wider < 1.5 && a.contrast * b.contrast > 0
}
