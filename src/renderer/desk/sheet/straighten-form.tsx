import type { Degrees } from '../../../core/geometry/angle-units.ts'
import { aidsOf, useBench } from '../../bench/bench-store.ts'
import type { Picks } from '../../picking/picks.ts'
import { searchInWords } from '../in-hand/stroke-words.ts'
import { abandonTool } from '../keeping/after-picking.ts'
import { KeepForm } from '../keeping/keep-form.tsx'
import { pickedLine, slopeInWords, straightBy, uncertaintyInWords } from './straighten.ts'

interface StraightenFormProps {
  picks: Picks
  onKeep: (straight: Degrees, u: Degrees) => Promise<void>
}

/** What the line that was picked says of the sheet, before that is kept. */
export function StraightenForm({ picks, onKeep }: StraightenFormProps) {
  const marks = useBench((bench) => bench.opened?.job.marks)
  const aids = useBench((bench) => aidsOf(bench, bench.sheet))
  const line = pickedLine(picks, marks ?? [])
  if (line === null) return null
  const straight = straightBy(line.angle, aids)
  return (
    <KeepForm
      label="Square up the sheet"
      keep="Square up the sheet"
      onKeep={() => onKeep(straight, line.u)}
      onAbandon={abandonTool}
      startAtKeep
    >
      <p>
        {line.how === 'stroke' ? 'By the stroke that was found,' : 'By this line, picked by hand,'} the level
        edge of the sheet lies {slopeInWords(straight)} on the scan, with a standard uncertainty of{' '}
        {uncertaintyInWords(line.u)}.
      </p>
      <p className="block-soft" aria-live="polite">
        {searchInWords(picks)}
      </p>
      <p className="block-soft">
        The sheet is shown turned upright; its views are reckoned along and across it.
      </p>
    </KeepForm>
  )
}
