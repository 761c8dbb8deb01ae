import { pixel } from '../../../core/geometry/frames.ts'
import { useBench } from '../../bench/bench-store.ts'
import { putDown, setPicks } from '../../bench/choose.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/section.tsx'
import { isComplete, noPicks, withPick } from '../../picking/picks.ts'
import { PickAt } from '../in-hand/pick-at.tsx'
import { NoteForm } from './note-form.tsx'
import { RegionForm } from './region-form.tsx'

/** The region of a note while it is picked, and the form that follows; null when another tool is in hand. */
export function Noting() {
  const picks = useBench((bench) => bench.picks)
  const sheet = useBench((bench) => bench.sheet)
  const page = useBench(
    (bench) => bench.opened?.job.sheets.find(({ id }) => id === bench.sheet)?.scan ?? null,
  )
  const { tool } = picks
  if (tool.kind !== 'note' || sheet === null || page === null) return null
  if (isComplete(picks)) {
    return tool.note === undefined ? <NoteForm sheet={sheet} key={sheet} /> : <RegionForm id={tool.note} />
  }
  const wholeSheet = () => {
    const corner = withPick(noPicks(tool), pixel(0, 0))
    setPicks(withPick(corner, pixel(page.width, page.height)))
  }
  return (
    <Section title="Region of the note">
      <PickAt />
      <div className="block-row">
        <Button onPress={wholeSheet}>The whole sheet</Button>
        <Button onPress={putDown}>Cancel</Button>
      </div>
    </Section>
  )
}
