import './picked-on.css'
import { setPicks } from '../../bench/choose.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/section.tsx'
import { byHandInstead, isLooking, type Picks } from '../../picking/picks.ts'
import { Caution } from '../keeping/caution.tsx'
import { isNotFound, missedInWords, searchInWords, sureInWords } from './stroke-words.ts'

/** What the newest picks were found to lie on; that nothing was found, under them or under those before, is a caution. */
export function PickedOn({ picks }: { picks: Picks }) {
  const words = searchInWords(picks)
  const missed = missedInWords(picks)
  return (
    <>
      {missed !== '' && <Caution>{missed}</Caution>}
      {isNotFound(picks) ? (
        <Caution>{words}</Caution>
      ) : (
        <p className="block-soft" aria-live="polite">
          {words}
        </p>
      )}
      {isLooking(picks) && (
        <div className="picked-on-long">
          <Button kind="quiet" onPress={() => setPicks(byHandInstead(picks))}>
            Don't wait, take it by hand
          </Button>
        </div>
      )}
    </>
  )
}

/** How surely that was found, for whoever asks. */
export function HowSurely({ picks }: { picks: Picks }) {
  const sure = sureInWords(picks)
  if (sure === '') return null
  return (
    <Section title="How surely it was found" fold="shut">
      <p className="block-soft">{sure}</p>
    </Section>
  )
}
