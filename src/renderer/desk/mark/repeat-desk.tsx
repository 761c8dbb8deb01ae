import { useState } from 'react'
import { pickAgain } from '../../../core/job/from-picks/pick-mark-again.ts'
import { labelOf } from '../../../core/job/ids/label.ts'
import { firstPlaces } from '../../../core/job/picks/picks-of.ts'
import { useBench } from '../../bench/bench-store.ts'
import { choose, putDown } from '../../bench/choose.ts'
import { makeOf } from '../../bench/edits.ts'
import { toTheSheet } from '../../focus/to-the-sheet.ts'
import { pickProgress, pickSentence } from '../../guide/pick-sentences.ts'
import { Button } from '../../parts/button.tsx'
import { pickedAgain } from '../../picking/picked-marks.ts'
import { isComplete } from '../../picking/picks.ts'
import { inWords, reason, type WindowReason } from '../../words/window-words.ts'
import { searchInWords } from '../in-hand/stroke-words.ts'
import { Caution } from '../keeping/caution.tsx'
import { KeepForm } from '../keeping/keep-form.tsx'
import { takeUpAgain } from './take-up-again.ts'

/** What lies on the desk while a mark is picked again: nothing that tells where it was. */
export function RepeatDesk() {
  const picks = useBench((bench) => bench.picks)
  const job = useBench((bench) => bench.opened?.job)
  const [kept, setKept] = useState(0)
  const { tool } = picks
  const mark = tool.kind === 'repeat' ? job?.marks.find(({ id }) => id === tool.mark) : undefined
  if (mark === undefined) return null
  const done = () => {
    putDown()
    choose({ kind: 'mark', id: mark.id })
  }
  const again = pickedAgain(picks)
  const made = again === null || 'refused' in again ? again : pickAgain(mark, again)
  const problem = otherCorners(
    mark.kind === 'path' ? firstPlaces(mark).length : 0,
    again === null || 'refused' in again ? undefined : firstPlaces(again).length,
  )
  const keep = async () => {
    if (made === null || problem !== null || !(await makeOf(made))) return
    setKept(kept + 1)
    takeUpAgain(mark)
    toTheSheet()
  }
  const looking = searchInWords(picks)
  const { settled, of } = pickProgress(picks)
  return (
    <>
      <div className="desk-head">
        <h2 className="desk-station">Pick {mark.label ?? labelOf(mark)} again</h2>
        <p className="desk-next" aria-live="polite" data-next>
          {isComplete(picks) ? 'Keep this pick, or cancel it and pick once more.' : pickSentence(picks)}
        </p>
        <p className="desk-missing">
          {kept === 0
            ? 'What was picked before is hidden.'
            : `${kept === 1 ? 'One more pick' : `${kept} more picks`} kept. What was picked before is hidden.`}
        </p>
      </div>
      {isComplete(picks) ? (
        <KeepForm
          label="Picked again"
          keep="Keep this pick, and go on"
          onKeep={keep}
          onAbandon={() => {
            takeUpAgain(mark)
            toTheSheet()
          }}
          disabled={made === null || 'refused' in made || problem !== null}
          startAtKeep
        >
          <p className="block-soft" aria-live="polite">
            {looking}
          </p>
          {problem !== null && <Caution>{inWords(problem)}</Caution>}
        </KeepForm>
      ) : (
        <div className="keep-form">
          <p className="block-soft">
            {settled} of {of} mark picked.{' '}
            {mark.how === 'hand' ? 'By hand, as it was.' : 'On the stroke, as it was.'}
          </p>
          <div className="keep-form-foot">
            <Button kind="main" onPress={done}>
              Done: show how they scatter
            </Button>
          </div>
        </div>
      )}
    </>
  )
}

/** Why a pick of a path can't be another of it: it has other corners; null where it has as many. */
function otherCorners(wanted: number, given: number | undefined): WindowReason | null {
  if (wanted === 0 || given === undefined || wanted === given) return null
  return reason('picked.other-corners', { wanted, given })
}
