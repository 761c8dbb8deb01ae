import { useBench } from '../../bench/bench-store.ts'
import { readWithHand } from '../../bench/readings.ts'
import { Section } from '../../parts/section.tsx'
import { Switch } from '../../parts/switch.tsx'

/** What the reading of a sheet rests on besides the strokes: the hand that the figures taken on it show. */
export function HandOfSheet({ sheet }: { sheet: string }) {
  const hand = useBench((bench) => bench.readings[sheet]?.hand)
  if (hand === undefined) return null
  return (
    <Section title="Hand of this sheet">
      <p className="block-soft" role="status">
        {hand.sentence}
      </p>
      {hand.known > 0 && (
        <Switch
          label="Read with the hand of this sheet"
          on={hand.on}
          onChange={(on) => void readWithHand(sheet, on)}
        />
      )}
    </Section>
  )
}
