import { useState } from 'react'
import { useBench } from '../../bench/bench-store.ts'
import { choose, putDown } from '../../bench/choose.ts'
import { makeEdit } from '../../bench/edits.ts'
import { toTheSheet } from '../../focus/to-the-sheet.ts'
import { pickProgress, pickSentence } from '../../guide/pick-sentences.ts'
import { Button } from '../../parts/button.tsx'
import { isComplete } from '../../picking/picks.ts'
import { inWords, reason, type WindowReason } from '../../words/window-words.ts'
import { searchInWords } from '../in-hand/stroke-words.ts'
import { Caution } from '../keeping/caution.tsx'
import { KeepForm } from '../keeping/keep-form.tsx'
import { repeatEdit } from '../pick-edits.ts'
import { pickAgain } from './pick-again.ts'

/** What lies on the desk while a mark is picked again: nothing that tells where it was. */
export function RepeatDesk() {
  const picks = useBench((bench) => bench.picks)
  const job = useBench((bench) => bench.opened?.job)
  const [made, setMade] = useState(0)
  const { tool } = picks
  const mark = tool.kind === 'repeat' ? job?.marks.find(({ id }) => id === tool.mark) : undefined
  if (mark === undefined) return null
  const done = () => {
    putDown()
    choose({ kind: 'mark', id: mark.id })
  }
  const edit = repeatEdit(mark, picks)
  const problem = otherCorners(
    mark.kind === 'path' ? mark.pixels.length : 0,
    edit?.do === 'repeat-pick' ? edit.pixels?.length : undefined,
  )
  const keep = async () => {
    if (edit === null || problem !== null || !(await makeEdit(edit))) return
    setMade(made + 1)
    pickAgain(mark)
    toTheSheet()
  }
  const looking = searchInWords(picks)
  const { settled, of } = pickProgress(picks)
  return (
    <>
      <div className="desk-head">
        <h2 className="desk-station">Pick {mark.label ?? mark.id} again</h2>
        <p className="desk-next" aria-live="polite" data-next>
          {isComplete(picks) ? 'Keep this pick, or abandon it and pick once more.' : pickSentence(picks)}
        </p>
        <p className="desk-missing">
          {made === 0
            ? 'What was picked before is hidden.'
            : `${made === 1 ? 'One more pick' : `${made} more picks`} kept. What was picked before is hidden.`}
        </p>
      </div>
      {isComplete(picks) ? (
        <KeepForm
          label="Picked again"
          keep="Keep this pick, and go on"
          onKeep={keep}
          onAbandon={() => {
            pickAgain(mark)
            toTheSheet()
          }}
          disabled={edit === null || problem !== null}
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
