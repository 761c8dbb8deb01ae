import { type SVGCommand, SVGPathData, SVGPathDataParser, SVGPathDataTransformer } from 'svg-pathdata'
import type { UserPoint } from './affine.ts'
import { flattenArc, flattenCubic, flattenQuadratic } from './flatten.ts'

/** The commands of the first stretch of a path: up to where it closes or another begins. Null when it is no path. */
function firstStretch(data: string): SVGCommand[] | null {
  const commands: SVGCommand[] = []
  let sound = true
  try {
    const parser = new SVGPathDataParser()
    parser.parse(data, commands)
    parser.finish(commands)
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error
    sound = false
  }
  const { MOVE_TO, CLOSE_PATH } = SVGPathData
  if (commands[0]?.type !== MOVE_TO) return null
  const next = commands.findIndex(({ type }, k) => k > 0 && (type === MOVE_TO || type === CLOSE_PATH))
  if (next < 0) return sound ? commands : null
  return commands.slice(0, next)
}

/** Turns one command after the other of a path into absolute ones of a few kinds, arcs with their centres. */
function normaliser(): (command: SVGCommand) => SVGCommand {
  const { TO_ABS, NORMALIZE_HVZ, NORMALIZE_ST, ANNOTATE_ARCS } = SVGPathDataTransformer
  const steps = [TO_ABS(), NORMALIZE_HVZ(false, true, true, false), NORMALIZE_ST(), ANNOTATE_ARCS()]
  return (command) => steps.reduce((done: SVGCommand, step) => step(done), command)
}

/** The points that a command goes through after `from`. */
function pointsOf(command: SVGCommand, from: UserPoint, tolerance: number): UserPoint[] {
  switch (command.type) {
    case SVGPathData.CURVE_TO: {
      const { x1, y1, x2, y2, x, y } = command
      return flattenCubic(from, [x1, y1], [x2, y2], [x, y], tolerance)
    }
    case SVGPathData.QUAD_TO: {
      const { x1, y1, x, y } = command
      return flattenQuadratic(from, [x1, y1], [x, y], tolerance)
    }
    case SVGPathData.ARC: {
      const { cX = 0, cY = 0, rX, rY, xRot: turn, phi1 = 0, phi2 = 0, x, y } = command
      return flattenArc({ centre: [cX, cY], radii: [rX, rY], turn, from: phi1, to: phi2 }, [x, y], tolerance)
    }
    case SVGPathData.MOVE_TO:
    case SVGPathData.LINE_TO:
      return [[command.x, command.y]]
    default:
      return []
  }
}

const CURVES = SVGPathData.CURVE_TO | SVGPathData.QUAD_TO | SVGPathData.ARC

/**
 * The points along the first stretch of an SVG path, curves as chords: `curved` says that there were some. Null when
 * it is no path.
 * @param tolerance how far a chord may lie from its curve, in the units of the path
 * @param most after so many points the rest is not looked at
 */
export function pathPoints(
  data: string,
  tolerance: number,
  most: number,
): { points: UserPoint[]; curved: boolean } | null {
  const commands = firstStretch(data)
  if (commands === null) return null
  const normalised = normaliser()
  const points: UserPoint[] = []
  let curved = false
  for (const written of commands) {
    const command = normalised(written)
    if (!Object.values(command).every((value) => typeof value !== 'number' || Number.isFinite(value)))
      return null
    if (points.length > most) break
    curved ||= (command.type & CURVES) !== 0
    for (const point of pointsOf(command, points.at(-1) ?? [0, 0], tolerance)) points.push(point)
  }
  return { points, curved }
}
