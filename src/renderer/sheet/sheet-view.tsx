import './sheet-view.css'
import type Konva from 'konva'
import { useEffect, useRef, useState } from 'react'
import { Layer, Shape, Stage } from 'react-konva'
import { useBench } from '../bench/bench-store.ts'
import { showSheet } from '../bench/choose.ts'
import { onCommand } from '../bench/commands.ts'
import type { BoxSize } from '../camera/camera.ts'
import { fitBox } from '../camera/fit-box.ts'
import { bringInSight, showWholeSheet, zoomIn, zoomOut } from '../camera/look-at.ts'
import { onKeys } from '../gestures/on-keys.ts'
import { onPointer } from '../gestures/on-pointer.ts'
import { Lens } from '../lens/lens.tsx'
import { toolName } from '../picking/pick-names.ts'
import { pixelsOfSelection } from './pixels-of-selection.ts'
import { SheetPainter } from './sheet-painter.ts'
import { SpokenPlace } from './spoken-place.tsx'

/** The sheet on the bench with everything drawn over it. Fills the box that it is put in. */
export function SheetView() {
  const box = useRef<HTMLDivElement>(null)
  const scan = useRef<HTMLDivElement>(null)
  const over = useRef<Konva.Layer>(null)
  const pending = useRef<Konva.Layer>(null)
  const painter = useRef<SheetPainter>(null)
  const size = useSizeOf(box)
  const tool = useBench((bench) => bench.picks.tool)
  const title = useBench(
    (bench) => bench.opened?.job.sheets.find(({ id }) => id === bench.sheet)?.title ?? '',
  )
  const said = useBench((bench) => whyNothingIsShown(bench))
  useShownSheet()
  useSelectionInSight()
  useZoomCommands()

  useEffect(() => {
    const element = box.current
    if (scan.current === null || over.current === null || pending.current === null || element === null) return
    const painting = new SheetPainter(scan.current, { over: over.current, pending: pending.current })
    painter.current = painting
    const held = { space: false }
    const endPointer = onPointer(element, held, () => painting.laid)
    const endKeys = onKeys(element, held)
    return () => {
      endPointer()
      endKeys()
      painting.end()
      painter.current = null
    }
  }, [])

  useEffect(() => {
    fitBox(size)
    painter.current?.ask('tiles', 'over', 'pending')
  }, [size])

  const picking = tool.kind !== 'look'
  return (
    <section className="sheet-view" aria-label="Sheet">
      <div
        ref={box}
        className="sheet-view-box"
        data-picking={picking || undefined}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a drawing that is worked on with keys is an application
        tabIndex={0}
        role="application"
        aria-label={`${title === '' ? 'No sheet' : title}. Tool: ${toolName(tool)}.`}
        aria-description={picking ? KEYS_PICKING : KEYS_LOOKING}
      >
        <div ref={scan} className="sheet-view-scan" aria-hidden="true" />
        <Stage width={size.width} height={size.height} listening={false}>
          <Layer ref={over} listening={false}>
            <Shape
              listening={false}
              perfectDrawEnabled={false}
              sceneFunc={() => painter.current?.paintOver()}
            />
          </Layer>
          <Layer ref={pending} listening={false}>
            <Shape
              listening={false}
              perfectDrawEnabled={false}
              sceneFunc={() => painter.current?.paintPending()}
            />
          </Layer>
        </Stage>
      </div>
      <div className="sheet-view-focus" />
      {said !== '' && (
        <div className="sheet-view-said">
          <p>{said}</p>
        </div>
      )}
      <Lens />
      <SpokenPlace />
    </section>
  )
}

const KEYS_LOOKING =
  'Arrow keys move the sheet, plus and minus zoom, W shows the whole sheet, Z goes close and back. Digits take up tools. Escape chooses nothing.'
const KEYS_PICKING =
  'Control with arrow keys moves the cross, with Shift further. P or Enter picks the stroke there, with Alt by hand, with Shift the old mark that lies there; ' +
  'Enter ends a path. H changes between strokes and by hand, E the part of the stroke, X between crossing and single ' +
  'stroke, I between the ink of the sheet and the other. Arrow keys then move the pick by a tenth of a pixel, with Shift by one. Escape gives up the last pick, then ' +
  'the tool.'

function useSizeOf(box: React.RefObject<HTMLDivElement | null>): BoxSize {
  const [size, setSize] = useState<BoxSize>({ width: 0, height: 0 })
  useEffect(() => {
    if (box.current === null) return
    const observer = new ResizeObserver(([entry]) => {
      if (entry === undefined) return
      const { width, height } = entry.contentRect
      setSize({ width: Math.round(width), height: Math.round(height) })
    })
    observer.observe(box.current)
    return () => observer.disconnect()
  }, [box])
  return size
}

/** Has the pictures of the sheet on the bench made and told of. */
function useShownSheet(): void {
  const sheet = useBench((bench) => bench.sheet)
  const job = useBench((bench) => bench.opened?.id)
  const there = useBench((bench) => (scanOf(bench)?.state ?? 'ok') === 'ok')
  const known = useBench((bench) => bench.sheet !== null && bench.pictures[bench.sheet] !== undefined)
  useEffect(() => {
    if (sheet !== null && job !== undefined && there && !known) void showSheet(sheet)
  }, [sheet, job, there, known])
}

type State = ReturnType<typeof useBench.getState>

const scanOf = ({ opened, sheet }: State) => opened?.scans.find((scan) => scan.sheet === sheet)

function whyNothingIsShown(bench: State): string {
  const { opened, sheet, pictures } = bench
  if (opened === null) return ''
  if (sheet === null) return 'No sheet is on the bench. Bring in a scan at the station Sheet.'
  const scan = scanOf(bench)
  if (scan !== undefined && scan.state !== 'ok') return scan.sentence
  return pictures[sheet] === undefined ? 'Fetching the sheet…' : ''
}

/** A figure is gone near to until it is so high, CSS pixels: what is to be read is to be seen. */
const READABLE = 22

/** What is chosen elsewhere is brought into sight. */
function useSelectionInSight(): void {
  const selection = useBench((bench) => bench.selection)
  useEffect(() => {
    bringInSight(pixelsOfSelection(selection), selection?.kind === 'found figure' ? READABLE : 0)
  }, [selection])
}

function useZoomCommands(): void {
  useEffect(
    () =>
      onCommand((command) => {
        if (command === 'zoom-in') zoomIn()
        if (command === 'zoom-out') zoomOut()
        if (command === 'whole-sheet') showWholeSheet()
      }),
    [],
  )
}
