import type { Mark } from '../../../core/job/model/types.ts'
import { repeatScatter } from '../../../core/measuring/features/repeat-scatter.ts'
import { toTheSheet } from '../../focus/to-the-sheet.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/section.tsx'
import { pixelsInWords } from '../../strokes/uncertainty-words.ts'
import { attempted } from '../../words/refusal.ts'
import { inWords } from '../../words/window-words.ts'
import { peopleInWords, scatterInWords } from './scatter-words.ts'
import { takeUpAgain } from './take-up-again.ts'

/** How often a mark was picked, how its picks scatter, and a way to pick it again without sight of it. */
export function RepeatsSection({ mark, writable }: { mark: Mark; writable: boolean }) {
  const tried = attempted(() => repeatScatter(mark))
  const scatter = 'done' in tried ? tried.done : null
  return (
    <Section title="Picked again">
      {'refused' in tried ? (
        <p>{inWords(tried.refused)}</p>
      ) : scatter === null ? (
        <p className="block-soft">
          Picked once. Picks made again without sight of the first tell how far a hand is to be trusted here.
        </p>
      ) : (
        <>
          <p>{scatterInWords(scatter)}</p>
          {scatter.people !== undefined && <p>{peopleInWords(scatter.people)}</p>}
          <dl className="block-facts">
            <dt>Picks</dt>
            <dd>{scatter.n}</dd>
            <dt>Standard deviation</dt>
            <dd>{pixelsInWords(scatter.s)}</dd>
            <dt>σ of the first alone</dt>
            <dd>{pixelsInWords(scatter.alone)}</dd>
            <dt>σ of all together</dt>
            <dd>{pixelsInWords(scatter.together)}</dd>
          </dl>
        </>
      )}
      <div className="block-row">
        <Button
          disabled={!writable}
          onPress={() => {
            takeUpAgain(mark)
            toTheSheet()
          }}
        >
          Pick again, without sight of it
        </Button>
      </div>
    </Section>
  )
}
