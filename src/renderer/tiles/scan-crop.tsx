import './scan-crop.css'
import { useEffect, useId, useRef } from 'react'
import type { SheetPictures } from '../../contract/pictures.ts'
import { useBench } from '../bench/bench-store.ts'
import { getPictures } from '../bench/get-pictures.ts'
import type { Extent } from '../camera/camera.ts'
import { overviewAddress, tileAddress } from './addresses.ts'
import { drawFrom } from './draw-from.ts'
import { keptPictures, pictureLoader, RANK } from './the-pictures.ts'
import { levelFor, tilesOver } from './wanted-tiles.ts'

interface ScanCropProps {
  sheet: string
  /** Of the scan, in pixels. */
  box: readonly [x: number, y: number, width: number, height: number]
  /** CSS pixels; the box is shown whole, with as much round it as fills them. */
  width: number
  height: number
  /** Degrees clockwise by which what is in it is turned from level: it is shown level. */
  angle?: number
  /** What is to be seen, in words. */
  label: string
}

/** A small picture of a part of a scan, as it is. */
export function ScanCrop({ sheet, box, width, height, angle = 0, label }: ScanCropProps) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const who = useId()
  const pictures = useBench((bench) => bench.pictures[sheet])
  const there = useBench(
    ({ opened }) => (opened?.scans.find((scan) => scan.sheet === sheet)?.state ?? 'ok') === 'ok',
  )
  const [x, y, w, h] = box

  useEffect(() => {
    if (pictures === undefined && there) void getPictures(sheet)
  }, [pictures, sheet, there])

  useEffect(() => {
    if (pictures === undefined) return
    let waited: readonly string[] = []
    const draw = (): void => {
      if (canvas.current === null) return
      waited = drawCrop(canvas.current, pictures, [x, y, w, h], { width, height, angle })
      pictureLoader.want(who, RANK.crop, 'bitmap', waited)
    }
    draw()
    const end = pictureLoader.listen((address, form) => {
      if (form === 'bitmap' && waited.includes(address)) draw()
    })
    return () => {
      end()
      pictureLoader.want(who, RANK.crop, 'bitmap', [])
    }
  }, [pictures, who, x, y, w, h, width, height, angle])

  return (
    <canvas
      className="scan-crop"
      ref={canvas}
      role="img"
      aria-label={label}
      style={{ width: `${width}px`, height: `${height}px` }}
    />
  )
}

/**
 * Draws a box of the scan as one picture, through a context that is turned: tiles that are turned one by one show the ground
 * between them.
 * @param scale pixels of the picture for each of the scan
 */
function drawTurned(
  context: CanvasRenderingContext2D,
  shown: Extent,
  level: number | null,
  pictures: SheetPictures,
  scale: number,
): void {
  const { left, top, right, bottom } = shown
  const [across, down] = [Math.ceil((right - left) * scale), Math.ceil((bottom - top) * scale)]
  const whole = new OffscreenCanvas(Math.max(1, across), Math.max(1, down))
  const upright = whole.getContext('2d')
  if (upright === null) return
  upright.scale(scale, scale)
  upright.translate(-left, -top)
  drawFrom(upright, shown, level, pictures)
  context.drawImage(whole, left, top, across / scale, down / scale)
}

/** What a level box must measure to hold what an upright one does that is turned: exact for quarter turns. */
function levelled([w, h]: readonly [number, number], turn: number): [number, number] {
  const [c, s] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))]
  // Of a box close round slanting lettering: what the lettering itself measures. Near half a right angle that is not told by
  // the box, which is then shown whole.
  const apart = c * c - s * s
  const [long, high] = [(w * c - h * s) / apart, (h * c - w * s) / apart]
  if (Math.abs(apart) > 0.2 && long > 0 && high > 0) return [long, high]
  return [w * c + h * s, w * s + h * c]
}

/** The upright box round a turned one. */
function extentRound(
  [x, y]: readonly [number, number],
  [w, h]: readonly [number, number],
  turn: number,
): Extent {
  const [c, s] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))]
  const [across, down] = [(w * c + h * s) / 2, (w * s + h * c) / 2]
  return { left: x - across, top: y - down, right: x + across, bottom: y + down }
}

/** @returns the pictures that are still waited for */
function drawCrop(
  canvas: HTMLCanvasElement,
  pictures: SheetPictures,
  [x, y, w, h]: readonly [number, number, number, number],
  { width, height, angle }: { width: number; height: number; angle: number },
): readonly string[] {
  const density = window.devicePixelRatio || 1
  const turn = (angle * Math.PI) / 180
  const level = levelled([w, h], turn)
  const zoom = Math.min(width / Math.max(1, level[0]), height / Math.max(1, level[1]))
  const middle = [x + w / 2, y + h / 2] as const
  const shown = extentRound(middle, [width / zoom, height / zoom], turn)
  const ready = pictures.progress.state === 'ready'
  const from = ready ? levelFor(zoom * density, pictures.levels) : null
  const wanted =
    from === null ? [] : tilesOver(shown, from, pictures).map((tile) => tileAddress(pictures, tile))
  const missing = from === null || !wanted.every((address) => keptPictures.has(address, 'bitmap'))
  const waited = missing ? [overviewAddress(pictures), ...wanted] : []
  const [across, down] = [Math.round(width * density), Math.round(height * density)]
  if (canvas.width !== across || canvas.height !== down) {
    canvas.width = across
    canvas.height = down
  }
  const context = canvas.getContext('2d')
  if (context === null) return waited
  context.setTransform(1, 0, 0, 1, 0, 0)
  context.clearRect(0, 0, across, down)
  context.scale(zoom * density, zoom * density)
  context.translate(width / zoom / 2, height / zoom / 2)
  context.rotate(-turn)
  context.translate(-middle[0], -middle[1])
  context.imageSmoothingQuality = missing || turn !== 0 ? 'medium' : 'low'
  const finest = missing ? null : from
  if (turn === 0) drawFrom(context, shown, finest, pictures)
  else drawTurned(context, shown, finest, pictures, zoom * density)
  return waited
}
