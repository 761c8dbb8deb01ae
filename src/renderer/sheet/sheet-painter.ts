import type Konva from 'konva'
import type { SheetPictures } from '../../contract/pictures.ts'
import { aidsOf, type BenchContents, useBench } from '../bench/bench-store.ts'
import type { BoxSize, Camera } from '../camera/camera.ts'
import { cameraOf, cameras } from '../camera/camera-store.ts'
import { cameraForTheBench } from '../camera/follow-the-bench.ts'
import { isShownDark, scanTone } from '../looking/scan-tone.ts'
import { type Carried, carried } from '../overlay/carried.ts'
import { displayList } from '../overlay/display-list.ts'
import { drawLaid } from '../overlay/draw-laid.ts'
import { drawPending } from '../overlay/draw-pending.ts'
import { type Inks, inksFor } from '../overlay/inks.ts'
import type { Item } from '../overlay/items.ts'
import type { Laid } from '../overlay/laid.ts'
import { layOut } from '../overlay/lay-out.ts'
import { forgetFigures, setFigure } from '../overlay/stacked-figure.ts'
import { pointer } from '../picking/pointer-store.ts'
import { figuresOnSheet } from '../reading/found-figures.ts'
import { groundAddress, overviewAddress, tileAddress } from '../tiles/addresses.ts'
import type { PictureForms } from '../tiles/picture-forms.ts'
import { ScanLayers } from '../tiles/scan-layers.ts'
import { scanPlan } from '../tiles/scan-plan.ts'
import {
  type LevelInSight,
  levelInSight,
  nameOfLevel,
  ringRoom,
  type SheetFrame,
} from '../tiles/shown-level.ts'
import { FOR_THE_SCREEN, isDark, keptPictures, pictureLoader, RANK } from '../tiles/the-pictures.ts'
import type { Tile } from '../tiles/wanted-tiles.ts'
import { SheetGround } from './sheet-ground.ts'
import { viewShown } from './view-shown.ts'

type Part = 'tiles' | 'over' | 'pending'

/** The sheet is at rest when it was not moved for so long, milliseconds. */
const REST = 90

const isOnHand = (address: string): boolean => keptPictures.has(address, 'image')

const isPicking = (): boolean => useBench.getState().picks.tool.kind !== 'look'

/**
 * Paints the sheet on the bench. Whatever changes (camera, bench, pointer, a tile that came) only asks for a frame;
 * each frame paints what it has to, once, without React.
 */
export class SheetPainter {
  readonly #layers: Record<Exclude<Part, 'tiles'>, Konva.Layer>
  readonly #scan: ScanLayers
  readonly #due = new Set<Part>()
  readonly #endings: (() => void)[]
  #frame = 0
  #items: { items: Item[]; from: readonly unknown[] } = { items: [], from: [] }
  #laid: Laid[] = []
  readonly #ground = new SheetGround()
  #shown: ReadonlySet<string> = new Set()
  #overview = ''
  /** What `#shown` was found for; empty: it is to be found anew. */
  #sight = ''
  /** What the layer over the sheet was last drawn for. */
  #drawnFor: { sheet: string; camera: Camera; box: BoxSize } | undefined
  #carriedAlong = false
  /** Runs while the sheet is being moved. */
  #resting: ReturnType<typeof setTimeout> | undefined

  /** @param scan where the scan itself is shown, under the layers */
  constructor(scan: HTMLElement, layers: Record<Exclude<Part, 'tiles'>, Konva.Layer>) {
    this.#scan = new ScanLayers(scan)
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
        this.ask('tiles')
        if (isPicking()) this.ask('pending')
        this.#carryOver()
      }),
      pointer.subscribe(() => {
        if (isPicking()) this.ask('pending')
      }),
      pictureLoader.listen((address, form) => this.#onPicture(address, form)),
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
      this.ask('over')
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
      this.#layers.pending.visible(isPicking())
      for (const part of due) {
        if (part === 'tiles') this.#showScan()
        else this.#layers[part].drawScene()
      }
    })
  }

  end(): void {
    cancelAnimationFrame(this.#frame)
    clearTimeout(this.#resting)
    for (const end of this.#endings) end()
    const parts = ['overview', 'tone', 'ink', 'ground', 'sight', 'ring']
    pictureLoader.wantAll(parts.map((who) => [who, RANK.sight, 'image', []] as const))
    this.#scan.clear()
  }

  /** Only what is in sight is painted anew. */
  #onPicture(address: string, form: keyof PictureForms): void {
    if (form === 'image') {
      if (!this.#shown.has(address)) return
      this.#sight = ''
      this.ask('tiles')
      return
    }
    // Whatever else comes, what stands on the screen is not let go for it.
    for (const shown of this.#shown) keptPictures.get(shown, 'image')
    if (address !== this.#overview) return
    if (form === 'tone') this.ask('tiles', 'over', 'pending')
    if (form === 'grey') this.ask('over')
  }

  #onBench(now: BenchContents, before: BenchContents): void {
    if (now.opened !== before.opened || now.sheet !== before.sheet || now.aids !== before.aids) {
      cameraForTheBench()
    }
    if (now.sheet !== before.sheet || now.aids !== before.aids || now.pictures !== before.pictures) {
      this.#sight = ''
      this.ask('tiles', 'over', 'pending')
    }
    if (now.picks !== before.picks) this.ask('pending')
    if (now.picks.tool !== before.picks.tool) this.ask('over')
    const shown = (bench: BenchContents) => [
      bench.opened,
      bench.table,
      bench.station,
      bench.selection,
      bench.readings,
      bench.shows,
    ]
    if (shown(now).some((part, i) => part !== shown(before)[i])) this.ask('over', 'pending')
  }

  #frameNow(): SheetFrame | undefined {
    const { sheet, pictures } = useBench.getState()
    const camera = cameraOf(sheet)
    const shown = sheet === null ? undefined : pictures[sheet]
    const { box } = cameras.getState()
    if (shown === undefined || camera === undefined) return undefined
    return { pictures: shown, camera, box, density: this.#layers.over.getCanvas().getPixelRatio() }
  }

  #showScan(): void {
    const frame = this.#frameNow()
    if (frame === undefined) {
      this.#scan.clear()
      this.#sight = ''
      return
    }
    const { pictures, camera, box, density } = frame
    const aids = aidsOf(useBench.getState(), pictures.sheet)
    const sight = levelInSight(frame, FOR_THE_SCREEN)
    const ground = aids.lift ? keptPictures.get(groundAddress(pictures), 'image') : undefined
    const { width, height } = pictures
    this.#scan.begin(pictures, density)
    this.#scan.tone(
      scanTone(aids, isDark(overviewAddress(pictures)), ground !== undefined),
      ground === undefined ? null : { url: ground.src, width, height },
    )
    // Most movements bring no other picture into sight: then nothing is to be done but to move what is there.
    const name = `${overviewAddress(pictures)} ${pictures.progress.state} ${density} ${nameOfLevel(sight)}`
    if (name !== this.#sight) {
      this.#sight = name
      const plan = scanPlan(frame, sight, isOnHand, this.#scan.shown)
      this.#scan.show(plan, (address) => keptPictures.get(address, 'image'))
      this.#want(frame, sight, aids.lift)
    }
    this.#scan.place(camera, box)
  }

  #want(frame: SheetFrame, sight: LevelInSight | null, lift: boolean): void {
    const { pictures } = frame
    const overview = overviewAddress(pictures)
    const ground = lift ? [groundAddress(pictures)] : []
    const address = (tile: Tile): string => tileAddress(pictures, tile)
    const tiles = sight?.tiles.map(address) ?? []
    this.#overview = overview
    this.#shown = new Set([overview, ...ground, ...tiles])
    // What is not made yet would be made out of turn: only what is in sight is worth that.
    const rest = pictures.progress.state === 'ready' && tiles.every(isOnHand)
    const around = rest && sight !== null ? sight.around.map(address) : []
    const ring = around.filter((one) => !this.#shown.has(one))
    pictureLoader.wantAll([
      ['tone', RANK.sight, 'tone', [overview]],
      ['ink', RANK.crop, 'grey', [overview]],
      ['overview', RANK.sight, 'image', [overview]],
      ['ground', RANK.sight, 'image', ground],
      ['sight', RANK.sight, 'image', tiles],
      ['ring', RANK.ring, 'image', ring.slice(0, ringRoom(tiles.length, FOR_THE_SCREEN))],
    ])
  }

  #inks(pictures: SheetPictures): Inks {
    const aids = aidsOf(useBench.getState(), pictures.sheet)
    return inksFor(isShownDark(isDark(overviewAddress(pictures)), aids))
  }

  #itemsNow(sheet: string): readonly Item[] {
    const bench = useBench.getState()
    const { opened, table, station, selection, picks, shows } = bench
    if (opened === null) return []
    const view = shows === 'view' ? viewShown(bench) : null
    const hidden = picks.tool.kind === 'repeat' ? picks.tool.mark : null
    const found = station === 'read' ? bench.readings[sheet]?.figures : undefined
    const from = [opened.job, table, sheet, station, selection, hidden, shows, view, found]
    if (from.some((part, i) => part !== this.#items.from[i])) {
      this.#items = {
        items: displayList({
          job: opened.job,
          table,
          sheet,
          station,
          selection,
          hidden,
          shows,
          view,
          figures: found === undefined ? [] : figuresOnSheet(opened.job, sheet, found),
        }),
        from,
      }
    }
    return this.#items.items
  }

  /** The context of a layer's own canvas, its unit the CSS pixel while Konva has the layer drawn. */
  #contextOf(part: 'over' | 'pending'): CanvasRenderingContext2D | null {
    return this.#layers[part].getNativeCanvasElement().getContext('2d')
  }

  /** Draws what lies over the sheet, when Konva has that layer drawn. */
  paintOver(): void {
    const frame = this.#frameNow()
    const context = this.#contextOf('over')
    this.#laid = []
    this.#drawnFor = undefined
    this.#placeOver(null)
    if (frame === undefined || context === null) return
    const { pictures, camera, box } = frame
    this.#drawnFor = { sheet: pictures.sheet, camera, box }
    const lettering = (text: string) => setFigure(context, text)
    this.#laid = layOut(this.#itemsNow(pictures.sheet), camera, box, lettering, this.#ground.of(frame))
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

  /** Draws what is being picked, when Konva has that layer drawn. */
  paintPending(): void {
    const frame = this.#frameNow()
    const context = this.#contextOf('pending')
    const { picks, opened } = useBench.getState()
    const place = pointer.getState()
    const something =
      picks.features.length > 0 ||
      place.dragFrom !== null ||
      place.by === 'cross' ||
      (place.takesOld && place.near !== null)
    this.#showOnly('pending', something)
    if (frame === undefined || context === null || opened === null || !isPicking()) return
    context.save()
    const pending = { picks, pointer: place, marks: opened.job.marks }
    drawPending(context, pending, frame.camera, frame.box, this.#inks(frame.pictures))
    context.restore()
  }
}
