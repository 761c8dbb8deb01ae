/**
 * The examination of reading on sheets to be looked at: every figure of a set at full size with its answer under it.
 * Run by `node scripts/run-ts.mjs tests/bench/reading-pictures.ts FOLDER [seed] [figures]`.
 */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { createCanvas } from '@napi-rs/canvas'
import { type ExaminedFigure, figureSet, SET_SIZE } from '../core/reading/drawn/figure-set.ts'

const [folder = '.', seed = '1', figures = String(SET_SIZE)] = process.argv.slice(2)
const [WIDTH, HEIGHT] = [1080, 1080]
const UNDER = 16

const canvas = createCanvas(WIDTH, HEIGHT)
const context = canvas.getContext('2d')
let [x, y, tallest, page] = [0, 0, 0, 0]

function clear(): void {
  context.fillStyle = '#ffe'
  context.fillRect(0, 0, WIDTH, HEIGHT)
}

function keep(): void {
  page++
  writeFileSync(join(folder, `figures-${String(page).padStart(2, '0')}.png`), canvas.toBuffer('image/png'))
  clear()
  ;[x, y, tallest] = [0, 0, 0]
}

function put({ grey, text, lettering, level }: ExaminedFigure): void {
  const words = `${text} · ${lettering} · ${level}`
  context.font = '11px sans-serif'
  const wide = Math.max(grey.width, context.measureText(words).width) + 8
  if (x + wide > WIDTH && x > 0) [x, y, tallest] = [0, y + tallest, 0]
  if (y + grey.height + UNDER > HEIGHT) keep()
  const image = context.createImageData(grey.width, grey.height)
  grey.pixels.forEach((value, i) => {
    image.data.set([value, value, value, 255], 4 * i)
  })
  context.putImageData(image, x, y)
  context.fillStyle = '#a00'
  context.fillText(words, x, y + grey.height + 12)
  x += wide
  tallest = Math.max(tallest, grey.height + UNDER)
}

mkdirSync(folder, { recursive: true })
clear()
for await (const figure of figureSet(Number(seed), Number(figures))) put(figure)
keep()
console.log(`${page} sheets in ${folder}`)
