import './read-figure.css'
import type { FigureReading } from '../../../core/reading/figure-reading.ts'
import { Figure } from '../../parts/figure.tsx'
import { sureWords } from '../../reading/sure-words.ts'
import { ScanCrop } from '../../tiles/scan-crop.tsx'

/** The crop on the desk, CSS pixels. */
const CROP = { width: 314, height: 116 }
/** What is left free round a figure, as a share of its lesser side. */
const MARGIN = 0.25

/** A box with a little room round it. */
export function withRoom([x, y, width, height]: FigureReading['box']): [number, number, number, number] {
  const room = MARGIN * Math.min(width, height)
  return [x - room, y - room, width + 2 * room, height + 2 * room]
}

/** A figure as it stands on the sheet, upright and enlarged. */
export function FigureCrop({
  sheet,
  box,
  angle,
}: {
  sheet: string
  box: FigureReading['box']
  angle: number
}) {
  return (
    <ScanCrop
      sheet={sheet}
      box={withRoom(box)}
      angle={angle}
      {...CROP}
      label="The figure as it stands on the sheet, upright"
    />
  )
}

/** What is read: the figure as a draughtsman sets it, how sure that is, and what the strokes say where that is another thing. */
export function ReadAs({ reading }: { reading: FigureReading }) {
  const { text, asRead, clear } = reading
  return (
    <div className="read-as" role="status" data-clear={clear || undefined}>
      <p className="read-as-figure">
        {text === null ? (
          <span className="read-as-none">No figure is read here</span>
        ) : (
          <Figure text={text} />
        )}
      </p>
      {text !== null && <p className="read-as-sure">{sureWords(reading)}</p>}
      <p className="read-as-strokes">
        {asRead === '' ? (
          'No strokes of figures or letters were seen: draw the box closer round them, or write what is printed.'
        ) : (
          <>
            The strokes say <span className="read-as-glyphs">{asRead}</span>
            {text === null && ': write what is printed, where you can read it.'}
          </>
        )}
      </p>
    </div>
  )
}
