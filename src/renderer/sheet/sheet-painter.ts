import type Konva from 'konva'
import type { SheetPictures } from '../../contract/pictures.ts'
import { aidsOf, type Bench, useBench } from '../bench/bench-store.ts'
import type { Camera, Size } from './camera.ts'
import { cameraOf, cameras } from './camera-store.ts'
import { drawPending } from './draw-pending.ts'
import { cameraForTheBench } from './follow-the-bench.ts'
import { type Carried, carried } from './overlay/carried.ts'
import { displayList } from './overlay/display-list.ts'
import { drawLaid } from './overlay/draw-laid.ts'
import { type Inks, inksFor } from './overlay/inks.ts'
import type { Item } from './overlay/items.ts'
import type { Laid } from './overlay/laid.ts'
import { layOut } from './overlay/lay-out.ts'
import { forgetFigures, setFigure } from './overlay/stacked-figure.ts'
import { pointer } from './pointer-store.ts'
import {
  drawSheet,
  groundAddress,
  isShownDark,
  levelOf,
  overviewAddress,
  ringRoom,
  type SheetFrame,
  setScanTransform,
  tileAddress,
} from './tiles/draw-sheet.ts'
import { isDark } from './tiles/is-dark.ts'
import { liftGround } from './tiles/lift-ground.ts'
import { pictureCache, pictureLoader, RANK } from './tiles/the-pictures.ts'
import { tilesInSight } from './tiles/wanted-tiles.ts'

type Part = 'tiles' | 'over' | 'pending'

/** The sheet is at rest when it was not moved for so long, milliseconds. */
const REST = 90

/**
 * Paints the sheet on the bench. Whatever changes (camera, bench, pointer, a tile that came) only asks for a frame;
 * each frame paints what it has to, once, without React.
 */
export class SheetPainter {
  readonly #layers: Record<Part, Konva.Layer>
  readonly #due = new Set<Part>()
  readonly #endings: (() => void)[]
  #frame = 0
  #items: { items: Item[]; from: readonly unknown[] } = { items: [], from: [] }
  #laid: Laid[] = []
  #shown: ReadonlySet<string> = new Set()
  #overview = ''
  /** What the layer over the sheet was last drawn for. */
  #drawnFor: { sheet: string; camera: Camera; box: Size } | undefined
  #carriedAlong = false
  /** Runs while the sheet is being moved. */
  #resting: ReturnType<typeof setTimeout> | undefined

  constructor(layers: Record<Part, Konva.Layer>) {
    this.#layers = layers
    const fonts = (): void => {
      forgetFigures()
      this.ask('over', 'pending')
    }
    document.fonts.addEventListener('loadingdone', fonts)
    this.#endings = [
      () => document.fonts.removeEventListener('loadingdone', fonts),
      cameras.subscribe((now, before) => {
        if (now.box !== before.box) cameraForTheBench()
        this.ask('tiles', 'pending')
        this.#carryOver()
      }),
      pointer.subscribe(() => {
        if (useBench.getState().picks.tool.kind !== 'look') this.ask('pending')
      }),
      pictureLoader.listen((address) => this.#onPicture(address)),
      useBench.subscribe((now, before) => this.#onBench(now, before)),
    ]
    cameraForTheBench()
    this.ask('tiles', 'over', 'pending')
  }

  /** What is drawn over the sheet, where it is now. */
  get laid(): readonly Laid[] {
    if (this.#carriedAlong) this.#layers.over.drawScene()
    return this.#laid
  }

  /**
   * While the sheet is being moved, what is drawn over it is carried along as it is, and drawn anew when it comes to
   * rest: laying out and lettering is most of the work of a frame.
   */
  #carryOver(): void {
    const frame = this.#frameNow()
    const drawn = this.#drawnFor
    const same = frame !== undefined && drawn !== undefined && drawn.box === frame.box
    const where =
      same && drawn.sheet === frame.pictures.sheet ? carried(drawn.camera, frame.camera, frame.box) : null
    clearTimeout(this.#resting)
    this.#resting = undefined
    if (where === null) {
      this.ask('over')
      return
    }
    this.#resting = setTimeout(() => {
      this.#resting = undefined
      this.ask('tiles', 'over')
    }, REST)
    this.#placeOver(where)
  }

  #placeOver(where: Carried | null): void {
    this.#carriedAlong = where !== null
    const { style } = this.#layers.over.getNativeCanvasElement()
    style.transformOrigin = '0 0'
    style.transform = where === null ? '' : `translate(${where.x}px, ${where.y}px) scale(${where.scale})`
  }

  /** Has parts painted in the next frame. */
  ask(...parts: Part[]): void {
    for (const part of parts) this.#due.add(part)
    if (this.#frame !== 0) return
    this.#frame = requestAnimationFrame(() => {
      this.#frame = 0
      const due = [...this.#due]
      this.#due.clear()
      this.#layers.pending.visible(useBench.getState().picks.tool.kind !== 'look')
      for (const part of due) this.#layers[part].drawScene()
    })
  }

  end(): void {
    cancelAnimationFrame(this.#frame)
    clearTimeout(this.#resting)
    for (const end of this.#endings) end()
    for (const who of ['overview', 'ground', 'sight', 'ring']) pictureLoader.want(who, RANK.sight, [])
  }

  /** Only what is in sight is painted anew. */
  #onPicture(address: string): void {
    if (this.#shown.has(address)) this.ask('tiles')
    // Whether the sheet is dark is told by its overview.
    if (this.#overview === address) this.ask('over', 'pending')
  }

  #onBench(now: Bench, before: Bench): void {
    if (now.opened !== before.opened || now.sheet !== before.sheet || now.aids !== before.aids) {
      cameraForTheBench()
    }
    if (now.sheet !== before.sheet || now.aids !== before.aids || now.pictures !== before.pictures) {
      this.ask('tiles', 'over', 'pending')
    }
    if (now.picks !== before.picks) this.ask('pending')
    const shown = (bench: Bench) => [bench.opened, bench.table, bench.station, bench.selection]
    if (shown(now).some((part, i) => part !== shown(before)[i])) this.ask('over', 'pending')
  }

  #frameNow(): SheetFrame | undefined {
    const { sheet, pictures } = useBench.getState()
    const camera = cameraOf(sheet)
    const shown = sheet === null ? undefined : pictures[sheet]
    const { box } = cameras.getState()
    if (shown === undefined || camera === undefined) return undefined
    return { pictures: shown, camera, box, density: this.#layers.tiles.getCanvas().getPixelRatio() }
  }

  paintTiles(context: CanvasRenderingContext2D): void {
    const frame = this.#frameNow()
    if (frame === undefined) return
    const { pictures, camera, box, density } = frame
    const aids = aidsOf(useBench.getState(), pictures.sheet)
    const level = levelOf(frame, pictureCache.limit)
    context.save()
    drawSheet(context, frame, level, pictureCache, this.#resting !== undefined)
    const ground = aids.lift ? pictureCache.get(groundAddress(pictures)) : undefined
    const dark = this.#isDark(pictures)
    if (ground !== undefined) {
      setScanTransform(context, camera, box, density)
      liftGround(context, ground, { left: 0, top: 0, right: pictures.width, bottom: pictures.height }, dark)
    }
    context.restore()
    // A sheet that is light on dark is lifted as its negative, and so is negative already.
    const invert = aids.negative !== (ground !== undefined && dark)
    const filter = [
      ...(invert ? ['invert(1)'] : []),
      ...(aids.contrast === 1 ? [] : [`contrast(${aids.contrast})`]),
    ].join(' ')
    const { style } = this.#layers.tiles.getNativeCanvasElement()
    if (style.filter !== filter) style.filter = filter
    this.#want(frame, level, aids.lift)
  }

  #want(frame: SheetFrame, level: ReturnType<typeof levelOf>, lift: boolean): void {
    const { pictures, camera, box } = frame
    const overview = overviewAddress(pictures)
    const ground = lift ? [groundAddress(pictures)] : []
    const tiles = (ring: number): string[] =>
      level === null ? [] : tilesInSight(camera, box, level, ring).map((tile) => tileAddress(pictures, tile))
    const sight = tiles(0)
    pictureLoader.want('overview', RANK.sight, [overview])
    pictureLoader.want('ground', RANK.sight, ground)
    pictureLoader.want('sight', RANK.sight, sight)
    this.#overview = overview
    this.#shown = new Set([overview, ...ground, ...sight])
    const rest = sight.every((address) => pictureCache.has(address))
    const around = rest ? tiles(1).filter((address) => !this.#shown.has(address)) : []
    pictureLoader.want('ring', RANK.ring, around.slice(0, ringRoom(sight.length, pictureCache.limit)))
  }

  #isDark = (pictures: SheetPictures): boolean => {
    const address = overviewAddress(pictures)
    return isDark(address, pictureCache.get(address))
  }

  #inks(pictures: SheetPictures): Inks {
    const aids = aidsOf(useBench.getState(), pictures.sheet)
    return inksFor(isShownDark(this.#isDark(pictures), aids))
  }

  #itemsNow(sheet: string): readonly Item[] {
    const { opened, table, station, selection } = useBench.getState()
    if (opened === null) return []
    const from = [opened.job, table, sheet, station, selection]
    if (from.some((part, i) => part !== this.#items.from[i])) {
      this.#items = { items: displayList({ job: opened.job, table, sheet, station, selection }), from }
    }
    return this.#items.items
  }

  paintOver(context: CanvasRenderingContext2D): void {
    const frame = this.#frameNow()
    this.#laid = []
    this.#drawnFor = undefined
    this.#placeOver(null)
    if (frame === undefined) return
    const { pictures, camera, box } = frame
    this.#drawnFor = { sheet: pictures.sheet, camera, box }
    const lettering = (text: string) => setFigure(context, text)
    this.#laid = layOut(this.#itemsNow(pictures.sheet), camera, box, lettering)
    this.#showOnly('over', this.#laid.length > 0)
    context.save()
    drawLaid(context, this.#laid, this.#inks(pictures), box)
    context.restore()
  }

  /**
   * Hides a layer on which nothing is drawn: Chromium (147, drawing in software) goes on showing what was on a canvas
   * that is cleared and left empty.
   */
  #showOnly(part: 'over' | 'pending', something: boolean): void {
    const { style } = this.#layers[part].getNativeCanvasElement()
    const visibility = something ? '' : 'hidden'
    if (style.visibility !== visibility) style.visibility = visibility
  }

  paintPending(context: CanvasRenderingContext2D): void {
    const frame = this.#frameNow()
    const { picks, opened } = useBench.getState()
    const place = pointer.getState()
    const something = picks.features.length > 0 || place.by === 'cross' || place.snapped !== null
    this.#showOnly('pending', something)
    if (frame === undefined || opened === null || picks.tool.kind === 'look') return
    context.save()
    const pending = { picks, pointer: place, marks: opened.job.marks }
    drawPending(context, pending, frame.camera, frame.box, this.#inks(frame.pictures))
    context.restore()
  }
}
