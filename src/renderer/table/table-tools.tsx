import { basisWord } from '../../core/job/ids/basis-word.ts'
import { statusWord } from '../../core/words/status-word.ts'
import './table-tools.css'
import { Button as AriaButton, Input, SearchField } from 'react-aria-components'
import { useBench } from '../bench/bench-store.ts'
import { lookIn, setFigures } from '../bench/store-sync.ts'
import { askForDimension } from '../entering/new-dimension-asked.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Icon } from '../parts/icon.tsx'
import { TakeOut } from '../taking-out/take-out.tsx'
import { UNIT_WORDS } from '../words/unit-words.ts'
import { BasisSample } from './basis-sample.tsx'
import { NextRows } from './next-rows.tsx'
import { StatusMark } from './status-mark.tsx'
import { TableFilter } from './table-filter.tsx'
import type { DimensionRows } from './use-dimension-rows.ts'

const BASES = ['printed', 'scaled', 'found', 'derived', 'mean', 'none'].map((id) => ({
  id,
  word: basisWord(id),
  shown: (
    <span className="table-tools-basis">
      <BasisSample basis={id} />
      {basisWord(id)}
    </span>
  ),
}))

const STATUSES = (['agreed', 'single', 'disputed', 'open'] as const).map((id) => ({
  id,
  word: statusWord(id),
  shown: <StatusMark status={id} />,
}))

const FIGURES_SET = [
  { id: 'fractions', label: '3/8' },
  { id: 'decimals', label: '.375' },
] as const

const UNITS = [
  { id: 'in', label: 'in' },
  { id: 'mm', label: 'mm' },
] as const

interface TableToolsProps {
  rows: DimensionRows
  total: number
  working: boolean
}

/** The head of the table: what is looked for, what is kept, how many rows that leaves, and the unit looked at. */
export function TableTools({ rows, total, working }: TableToolsProps) {
  const own = useBench((bench) => bench.opened?.job.unit ?? 'in')
  const unit = useBench((bench) => bench.unit) ?? own
  const figuresAs = useBench((bench) => bench.figuresAs)
  const writable = useBench(({ opened }) => opened?.writable === true)
  const shown = rows.rows.length
  return (
    <div className="table-tools">
      <SearchField
        className="table-tools-search"
        aria-label="Find dimensions"
        value={rows.sought}
        onChange={rows.seek}
      >
        <Input className="table-tools-input" placeholder="Find" spellCheck={false} />
        <AriaButton className="table-tools-clear" aria-label="Clear what is looked for">
          <Icon name="close" />
        </AriaButton>
      </SearchField>
      <TableFilter
        label="Basis"
        options={BASES}
        kept={rows.keptIn('basis')}
        onKeep={(words) => rows.keep('basis', words)}
      />
      <TableFilter
        label="Status"
        options={STATUSES}
        kept={rows.keptIn('status')}
        onKeep={(words) => rows.keep('status', words)}
      />
      <div className="table-tools-state" data-working={working || undefined}>
        <p className="table-tools-count" role="status" aria-label="Rows shown">
          {shown === total ? (total === 1 ? '1 row' : `${total} rows`) : `${shown} of ${total}`}
        </p>
        <p className="table-tools-working" aria-hidden={!working}>
          working out…
        </p>
      </div>
      <NextRows rows={rows.rows} />
      <Button
        kind="quiet"
        icon="plus"
        label="New dimension…"
        hint="A dimension without a pick: lettered, by gauge, by formula or measured. Insert"
        disabled={!writable}
        onPress={() => askForDimension()}
      >
        <span className="menu-words">New dimension…</span>
      </Button>
      <TakeOut rows={rows.rows.map(({ original }) => original)} working={working} />
      {unit !== own && (
        <p className="table-tools-unit">
          <span className="table-tools-shown">Shown in {UNIT_WORDS[unit]}; the </span>
          job is in {UNIT_WORDS[own]}.
        </p>
      )}
      {unit === 'in' && (
        <Choice
          label="Figures in fractions or decimals"
          hideLabel
          value={figuresAs}
          options={FIGURES_SET}
          onChange={setFigures}
        />
      )}
      <Choice
        label="Unit looked at"
        hideLabel
        value={unit}
        options={UNITS}
        onChange={(chosen) => lookIn(chosen === own ? null : chosen)}
      />
    </div>
  )
}
