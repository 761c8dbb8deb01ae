import './scan-crop.css'
import { useEffect, useId, useRef } from 'react'
import type { SheetPictures } from '../../contract/pictures.ts'
import { useBench } from '../bench/bench-store.ts'
import { getPictures } from '../bench/get-pictures.ts'
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
  /** What is to be seen, in words. */
  label: string
}

/** A small picture of a part of a scan, as it is. */
export function ScanCrop({ sheet, box, width, height, label }: ScanCropProps) {
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
      waited = drawCrop(canvas.current, pictures, [x, y, w, h], { width, height })
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
  }, [pictures, who, x, y, w, h, width, height])

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

/** @returns the pictures that are still waited for */
function drawCrop(
  canvas: HTMLCanvasElement,
  pictures: SheetPictures,
  [x, y, w, h]: readonly [number, number, number, number],
  { width, height }: { width: number; height: number },
): readonly string[] {
  const density = window.devicePixelRatio || 1
  const zoom = Math.min(width / Math.max(1, w), height / Math.max(1, h))
  const [left, top] = [x + w / 2 - width / zoom / 2, y + h / 2 - height / zoom / 2]
  const shown = { left, top, right: left + width / zoom, bottom: top + height / zoom }
  const ready = pictures.progress.state === 'ready'
  const level = ready ? levelFor(zoom * density, pictures.levels) : null
  const wanted =
    level === null ? [] : tilesOver(shown, level, pictures).map((tile) => tileAddress(pictures, tile))
  const missing = level === null || !wanted.every((address) => keptPictures.has(address, 'bitmap'))
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
  context.translate(-left, -top)
  context.imageSmoothingQuality = missing ? 'medium' : 'low'
  drawFrom(context, shown, missing ? null : level, pictures)
  return waited
}
