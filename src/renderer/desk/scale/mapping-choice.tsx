import { degrees } from '../../../core/geometry/angle-units.ts'
import type { MappingKind, View } from '../../../core/job/model/types.ts'
import { MAPPING_WORDS } from '../../../core/words/mapping-words.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeEdit } from '../../bench/edits.ts'
import { Choice } from '../../parts/choice.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { Section } from '../../parts/section.tsx'
import { useKept } from '../../parts/use-kept.ts'
import { MAPPING_WHEN } from '../../words/mapping-when.ts'

const OPTIONS = (Object.keys(MAPPING_WORDS) as MappingKind[]).map((id) => ({
  id,
  label: MAPPING_WORDS[id].name,
}))

/** How pixels of a view are turned into true size. */
export function MappingChoice({ view }: { view: View }) {
  const writable = useBench((bench) => bench.opened?.writable === true)
  const { id } = view
  const { shown: mapping, keep } = useKept(view.mapping, (kind) =>
    makeEdit({ do: 'change-view', id, set: { mapping: kind } }),
  )
  const grain = useKept<number>(view.grain ?? 0, (turned) =>
    makeEdit({ do: 'change-view', id, set: { grain: degrees(turned) } }),
  )
  return (
    <Section title="How the sheet has kept its shape">
      <Choice
        label="Scales"
        hideLabel
        value={mapping}
        options={OPTIONS}
        disabled={!writable}
        onChange={(kind) => void keep(kind)}
        note={MAPPING_WHEN[mapping]}
      />
      {mapping === 'two-axis' && (
        <NumberField
          label="Level edge of the sheet"
          suffix="°"
          value={grain.shown}
          places={2}
          step={0.01}
          least={-90}
          most={90}
          disabled={!writable}
          note="0 when the sheet lies straight in the scan; clockwise is more."
          onChange={(turned) => {
            if (!Number.isNaN(turned) && turned !== grain.shown) void grain.keep(turned)
          }}
        />
      )}
    </Section>
  )
}
