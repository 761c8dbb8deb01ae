import type { PDFPageProxy } from 'pdfjs-dist'
import { pdfLibrary } from '../file/pdf-library.ts'
import { after, matrixOf, type PdfMatrix } from './matrix.ts'

/** A picture that is painted on a page. */
export interface PaintedPicture {
  /** What the unit square of the picture becomes on the page, in 1/72 inch from its upper left corner, y down. */
  at: PdfMatrix
  width: number
  height: number
  /** The library's name for it. */
  id: string
  /** A stencil, painted in black where it is open. */
  stencil: boolean
}

export interface PageContent {
  pictures: PaintedPicture[]
  /** Whether anything that can be seen is painted over the first picture, or is not told of here. */
  more: boolean
  /** Whether anything that can be seen is painted at all. */
  empty: boolean
}

const INVISIBLE_LETTERING = [3, 7]
const MOST_NESTED = 1000

/** Who painted what on a page, as far as it matters for whether the page is a scan. */
export async function pageContent(page: PDFPageProxy, device: PdfMatrix): Promise<PageContent> {
  const { OPS, AnnotationMode } = await pdfLibrary()
  const { fnArray, argsArray } = await page.getOperatorList({ annotationMode: AnnotationMode.DISABLE })
  const content: PageContent = { pictures: [], more: false, empty: true }
  const saved: State[] = []
  let state: State = { at: device, lettering: 0, black: true }
  const paint = (): void => {
    content.empty = false
    if (content.pictures.length > 0) content.more = true
  }
  const put = (id: unknown, width: unknown, height: unknown, stencil: boolean): void => {
    content.empty = false
    if (typeof id === 'string' && typeof width === 'number' && typeof height === 'number') {
      content.pictures.push({ at: state.at, width, height, id, stencil })
    } else content.more = true
  }
  for (const [i, does] of fnArray.entries()) {
    const args = listOf(argsArray[i])
    switch (does) {
      case OPS.save:
        saved.push(state)
        if (saved.length > MOST_NESTED) throw new RangeError('nested too deep')
        break
      case OPS.restore:
        state = saved.pop() ?? state
        break
      case OPS.transform:
        state = { ...state, at: moved(state.at, args) }
        break
      case OPS.paintFormXObjectBegin:
        saved.push(state)
        state = { ...state, at: moved(state.at, args[0]) }
        break
      case OPS.beginGroup:
        saved.push(state)
        state = { ...state, at: moved(state.at, fieldOf(args[0], 'matrix')) }
        break
      case OPS.paintFormXObjectEnd:
      case OPS.endGroup:
        state = saved.pop() ?? state
        break
      case OPS.setTextRenderingMode:
        state = { ...state, lettering: Number(args[0]) }
        break
      case OPS.setFillRGBColor:
        state = { ...state, black: isBlack(args) }
        break
      case OPS.setFillColorN:
        state = { ...state, black: false }
        break
      case OPS.setGState:
        // Transparency, blending, soft masks.
        if (content.pictures.length === 0 && !isPlainState(args[0])) content.more = true
        break
      case OPS.paintImageXObject:
        put(args[0], args[1], args[2], false)
        break
      case OPS.paintImageMaskXObject:
        if (state.black)
          put(fieldOf(args[0], 'data'), fieldOf(args[0], 'width'), fieldOf(args[0], 'height'), true)
        else paintUntold(content)
        break
      case OPS.showText:
        if (!INVISIBLE_LETTERING.includes(state.lettering)) paint()
        break
      case OPS.constructPath:
        if (args[0] !== OPS.endPath) paint()
        break
      case OPS.shadingFill:
        paint()
        break
      case OPS.paintInlineImageXObject:
      case OPS.paintInlineImageXObjectGroup:
      case OPS.paintImageXObjectRepeat:
      case OPS.paintImageMaskXObjectGroup:
      case OPS.paintImageMaskXObjectRepeat:
      case OPS.paintSolidColorImageMask:
        paintUntold(content)
        break
      default:
    }
  }
  return content
}

interface State {
  at: PdfMatrix
  /** Mode of lettering. */
  lettering: number
  /** Whether stencils are painted in black. */
  black: boolean
}

function paintUntold(content: PageContent): void {
  content.empty = false
  content.more = true
}

const listOf = (args: unknown): readonly unknown[] => (Array.isArray(args) ? args : [])

const moved = (at: PdfMatrix, by: unknown): PdfMatrix => {
  const matrix = matrixOf(by)
  return matrix === undefined ? at : after(at, matrix)
}

const fieldOf = (value: unknown, name: string): unknown =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[name] : undefined

/** Comes as `#000000`, or as three numbers. */
const isBlack = (args: readonly unknown[]): boolean =>
  args[0] === '#000000' || (args.length === 3 && args.every((one) => one === 0))

const HARMLESS: Readonly<Record<string, (value: unknown) => boolean>> = {
  ca: (value) => value === 1,
  BM: (value) => value === 'source-over' || value === 'Normal' || value === 'normal',
  SMask: (value) => value === false,
  TR: (value) => value === null || value === false,
}

/** Whether what is painted with this state looks as without it. */
const isPlainState = (pairs: unknown): boolean =>
  listOf(pairs).every((pair) => {
    const [name, value] = listOf(pair)
    return HARMLESS[String(name)]?.(value) ?? true
  })
