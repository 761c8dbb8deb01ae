import { useBench } from '../../bench/bench-store.ts'
import { Choice } from '../../parts/choice.tsx'
import { Switch } from '../../parts/switch.tsx'
import { type RoundSide, type StraightSide, useHowToPick } from '../../picking/how-to-pick.ts'
import { needsOf } from '../../picking/picks.ts'
import { isCornerToCorner } from '../../picking/tool.ts'
import { OtherInk } from './other-ink.tsx'

const STRAIGHT: readonly { id: StraightSide; label: string }[] = [
  { id: 'centre', label: 'Centre' },
  { id: 'upper', label: 'Upper or left edge' },
  { id: 'lower', label: 'Lower or right edge' },
]

const ROUND: readonly { id: RoundSide; label: string }[] = [
  { id: 'centre', label: 'Centre' },
  { id: 'outer', label: 'Outer edge' },
  { id: 'inner', label: 'Inner edge' },
]

/** How the next picks are taken: on strokes and on which part of them, or by hand. */
export function HowToPick() {
  const { byHand, straight, round, crossings } = useHowToPick()
  const tool = useBench((bench) => bench.picks.tool)
  if (isCornerToCorner(tool)) return null
  const needs = needsOf(tool)
  const isRound = needs.includes('circle')
  const points = needs.includes('point')
  if (needs.some((need) => need === 'path' || need === 'closed path')) {
    return <p className="block-soft">Paths are picked by hand.</p>
  }
  return (
    <>
      {isRound ? (
        <Choice
          label="Part of the stroke"
          value={round}
          options={ROUND}
          disabled={byHand}
          onChange={(side) => useHowToPick.setState({ round: side })}
        />
      ) : (
        <Choice
          label="Part of the stroke"
          value={straight}
          options={STRAIGHT}
          columns={1}
          disabled={byHand}
          onChange={(side) => useHowToPick.setState({ straight: side })}
        />
      )}
      {points && (
        <Switch
          label="Where strokes cross"
          on={crossings}
          disabled={byHand || straight !== 'centre'}
          onChange={(on) => useHowToPick.setState({ crossings: on })}
          note="A point is taken where two strokes meet near it; else on the one stroke. Edges have no crossing."
        />
      )}
      <OtherInk disabled={byHand} />
      <Switch
        label="By hand"
        on={byHand}
        onChange={(on) => useHowToPick.setState({ byHand: on })}
        note="Exactly where it is pointed at, to about a pixel. For one pick: Alt and click."
      />
    </>
  )
}
